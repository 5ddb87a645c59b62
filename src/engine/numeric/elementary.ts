/**
 * exp, log, log10 and expm1 in plain arithmetic: the same bits in every engine that runs JavaScript. The language leaves
 * the last bit of Math.exp and its kin to each engine, and they differ (Node 24 and Chromium 156 in one of ten values);
 * a plan worked out in a browser must be the plan worked out by the server. `**` and Math.sqrt were found to agree.
 * exp, log and log10 are after fdlibm, whose notice below the bundles keep.
 * Error below one unit in the last place (expm1: two). Limits: words of a double are taken in little-endian order.
 */

/*! @license exp, log and log10 are after fdlibm:
 * Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
 *
 * Developed at SunPro, a Sun Microsystems, Inc. business.
 * Permission to use, copy, modify, and distribute this
 * software is freely granted, provided that this notice
 * is preserved.
 */

const double = new Float64Array(1);
const words = new Int32Array(double.buffer);
/** Index of the word with sign and exponent, and of the other. */
const HIGH = 1;
const LOW = 0;

const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;
const TWO_54 = 2 ** 54;

/** 2^k for -1022 <= k <= 1023. */
function power(k: number): number {
  words[LOW] = 0;
  words[HIGH] = (k + 1023) << 20;
  return double[0]!;
}

export function exp(x: number): number {
  if (Number.isNaN(x) || x > 709.782712893384) return Number.isNaN(x) ? x : Number.POSITIVE_INFINITY;
  if (x < -745.1332191019411) return 0;
  const size = Math.abs(x);
  if (size < 2 ** -28) return 1 + x;
  if (x === 1) return Math.E;
  double[0] = size;
  const at = words[HIGH]!;
  // x = k ln 2 + r, r in two parts.
  let k = 0;
  let high = x;
  let low = 0;
  if (at > 0x3fd62e42) {
    k = at < 0x3ff0a2b2 ? Math.sign(x) : Math.trunc(Math.LOG2E * x + (x < 0 ? -0.5 : 0.5));
    high = x - k * LN2_HIGH;
    low = k * LN2_LOW;
  }
  const r = high - low;
  const t = r * r;
  const c =
    r -
    t *
      (0.16666666666666602 +
        t *
          (-0.0027777777777015593 +
            t * (6.613756321437934e-5 + t * (-1.6533902205465252e-6 + t * 4.1381367970572385e-8))));
  if (k === 0) return 1 - ((r * c) / (c - 2) - r);
  const y = 1 - (low - (r * c) / (2 - c) - high);
  if (k === 1024) return y * 2 * 2 ** 1023;
  return k >= -1021 ? y * power(k) : y * power(k + 1000) * 2 ** -1000;
}

export function log(x: number): number {
  if (!(x > 0) || x === Number.POSITIVE_INFINITY)
    return x === 0 ? Number.NEGATIVE_INFINITY : x < 0 ? Number.NaN : x;
  const subnormal = x < 2 ** -1022;
  double[0] = subnormal ? x * TWO_54 : x;
  // x = 2^k (1 + f), f between the root of a half and the root of two, less one.
  const fraction = words[HIGH]! & 0xfffff;
  const carry = (fraction + 0x95f64) & 0x100000;
  const k = (words[HIGH]! >> 20) - 1023 + (carry >> 20) - (subnormal ? 54 : 0);
  words[HIGH] = fraction | (carry ^ 0x3ff00000);
  const f = double[0]! - 1;
  if ((0xfffff & (2 + fraction)) < 3) {
    if (f === 0) return k === 0 ? 0 : k * LN2_HIGH + k * LN2_LOW;
    const rest = f * f * (0.5 - 0.3333333333333333 * f);
    return k === 0 ? f - rest : k * LN2_HIGH - (rest - k * LN2_LOW - f);
  }
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const even = w * (0.3999999999940942 + w * (0.22222198432149784 + w * 0.15313837699209373));
  const odd =
    z * (0.6666666666666735 + w * (0.2857142874366239 + w * (0.1818357216161805 + w * 0.14798198605116586)));
  const rest = odd + even;
  if (((fraction - 0x6147a) | (0x6b851 - fraction)) > 0) {
    const half = 0.5 * f * f;
    if (k === 0) return f - (half - s * (half + rest));
    return k * LN2_HIGH - (half - (s * (half + rest) + k * LN2_LOW) - f);
  }
  if (k === 0) return f - s * (f - rest);
  return k * LN2_HIGH - (s * (f - rest) - k * LN2_LOW - f);
}

export function log10(x: number): number {
  if (!(x > 0) || x === Number.POSITIVE_INFINITY) return log(x);
  const subnormal = x < 2 ** -1022;
  double[0] = subnormal ? x * TWO_54 : x;
  const k = (words[HIGH]! >> 20) - 1023 - (subnormal ? 54 : 0);
  const below = k < 0 ? 1 : 0;
  words[HIGH] = (words[HIGH]! & 0xfffff) | ((0x3ff - below) << 20);
  const y = k + below;
  return y * 3.694239077158931e-13 + Math.LOG10E * log(double[0]!) + y * 0.30102999566361177;
}

/** exp(x) - 1 without loss where x is small: the rounding of exp is undone by the log of the same. */
export function expm1(x: number): number {
  const grown = exp(x);
  if (grown === 1) return x;
  if (grown === 0 || grown === Number.POSITIVE_INFINITY) return grown - 1;
  return (grown - 1) * (x / log(grown));
}
