/** Pictures stripped to their image: what goes, what stays byte by byte, what is refused and in which words. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  JPEG,
  jpegOfPhone,
  PNG,
  PROGRESSIVE,
  pngOfPhone,
  TELLTALES,
  WEBP,
  WEBP_LOSSLESS,
  webpOfPhone,
} from "../../../checks/kit/pictures.ts";
import { MOST_PICTURE_BYTES } from "./limits.ts";
import { orientationIn, tiffWith } from "./orientation.ts";
import { readPicture } from "./read-picture.ts";

const read = (bytes: Uint8Array, name = "IMG_1.jpg") => readPicture({ name, bytes });
function kept(bytes: Uint8Array): Buffer {
  const one = read(bytes);
  if (!one.ok) throw new Error(one.message.text);
  return Buffer.from(one.picture.bytes);
}
const words = (bytes: Uint8Array, name?: string): string => {
  const one = read(bytes, name);
  return one.ok ? "kept" : one.message.text;
};
/** What a decoder reads of a JPEG file: frame, tables, scans with their bytes, and its end. */
function imageOf(jpeg: Buffer): Buffer {
  const parts: Buffer[] = [];
  for (let at = 2; at < jpeg.length; ) {
    const code = jpeg[at + 1] ?? 0;
    if (code === 0xd9) return Buffer.concat(parts);
    const end = at + 2 + jpeg.readUInt16BE(at + 2);
    let scan = end;
    if (code === 0xda) {
      while (jpeg[scan] !== 0xff || jpeg[scan + 1] === 0 || ((jpeg[scan + 1] ?? 0) & 0xf8) === 0xd0)
        scan += 1;
    }
    if (code < 0xe0) parts.push(jpeg.subarray(at, scan));
    at = scan;
  }
  throw new Error("no end");
}

const PLAIN = { JPEG, PROGRESSIVE, PNG, WEBP, WEBP_LOSSLESS };
const OF_PHONE = {
  jpeg: jpegOfPhone(JPEG),
  "progressive jpeg": jpegOfPhone(PROGRESSIVE),
  "jpeg on its side": jpegOfPhone(JPEG, 6),
  png: pngOfPhone(),
  webp: webpOfPhone(),
  "lossless webp": webpOfPhone(WEBP_LOSSLESS),
  "webp on its side": webpOfPhone(WEBP, 8),
};

describe("what tells of place, time and camera", () => {
  test.each(Object.entries(OF_PHONE))("goes from a %s", (_, bytes) => {
    for (const word of TELLTALES.slice(0, 3)) expect(bytes.includes(Buffer.from(word, "latin1"))).toBe(true);
    const left = kept(bytes);
    for (const word of TELLTALES) expect(left.includes(Buffer.from(word, "latin1")), word).toBe(false);
  });

  test("a second time there is nothing to strip", () => {
    for (const bytes of [...Object.values(OF_PHONE), ...Object.values(PLAIN)]) {
      expect(kept(kept(bytes)).equals(kept(bytes))).toBe(true);
    }
  });
});

describe("the image stays", () => {
  test("every byte of frame, tables and scans of a JPEG", () => {
    for (const plain of [JPEG, PROGRESSIVE])
      for (const orientation of [1, 3, 6])
        expect(imageOf(kept(jpegOfPhone(plain, orientation))).equals(imageOf(plain))).toBe(true);
  });

  test("every byte of a PNG's image data, and nothing of what a phone puts around it", () => {
    const bare = kept(PNG);
    expect(kept(pngOfPhone()).equals(bare)).toBe(true);
    const at = PNG.indexOf("IDAT") - 4;
    const image = PNG.subarray(at, at + 12 + PNG.readUInt32BE(at));
    expect(image.length).toBeGreaterThan(50);
    expect(bare.includes(image)).toBe(true);
  });

  test("the coded image of a WebP, in the simple form again", () => {
    for (const plain of [WEBP, WEBP_LOSSLESS]) {
      const image = plain.subarray(12, plain.length);
      expect(kept(webpOfPhone(plain)).includes(image)).toBe(true);
    }
    expect(kept(webpOfPhone(WEBP)).equals(WEBP)).toBe(true);
  });

  test("its size is that of the picture as it is shown", () => {
    const sizes = Object.values(PLAIN).map((bytes) => read(bytes));
    for (const one of sizes) expect(one).toMatchObject({ ok: true, picture: { width: 24, height: 16 } });
    expect(read(jpegOfPhone(JPEG, 6))).toMatchObject({ picture: { width: 16, height: 24 } });
    expect(read(webpOfPhone(WEBP, 8))).toMatchObject({ picture: { width: 16, height: 24 } });
    expect(read(jpegOfPhone(JPEG, 3))).toMatchObject({ picture: { width: 24, height: 16 } });
  });

  test("which way up stays, in a block that holds nothing else", () => {
    for (let way = 2; way <= 8; way += 1) {
      const block = Buffer.from(tiffWith(way));
      expect(orientationIn(block)).toBe(way);
      expect(block).toHaveLength(26);
      expect(kept(jpegOfPhone(JPEG, way)).includes(block)).toBe(true);
      expect(kept(webpOfPhone(WEBP, way)).includes(block)).toBe(true);
    }
    expect(kept(jpegOfPhone(JPEG, 1)).includes("Exif")).toBe(false);
    expect(kept(jpegOfPhone(JPEG, 9)).includes("Exif")).toBe(false);
  });
});

describe("what is not taken", () => {
  test.each([
    ["HEIC", Buffer.from("\0\0\0\x18ftypheic\0\0\0\0mif1heic", "latin1"), /is HEIC.*most compatible form/],
    ["SVG", Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>'), /SVG; a picture must be/],
    ["HTML", Buffer.from("<!doctype html><p>"), /text/],
    ["GIF", Buffer.from("GIF89a\x01\0\x01\0", "latin1"), /is GIF/],
    ["a PDF", Buffer.from("%PDF-1.7\n"), /is a PDF/],
    ["a film", Buffer.from("\0\0\0\x18ftypmp42", "latin1"), /is a film/],
    ["AVIF", Buffer.from("\0\0\0\x18ftypavif", "latin1"), /is AVIF/],
    ["a raw file", Buffer.from("II*\0\x08\0\0\0", "latin1"), /raw file/],
    ["bytes of nobody's", Buffer.from([0, 1, 2, 3]), /no picture that is known here/],
    ["nothing", Buffer.alloc(0), /is empty/],
    [
      "an arithmetic JPEG",
      Buffer.from(JPEG).fill(0xc9, JPEG.indexOf("ffc0", 0, "hex") + 1, JPEG.indexOf("ffc0", 0, "hex") + 2),
      /browsers don't show/,
    ],
  ])("%s", (_, bytes, expected) => {
    expect(words(bytes)).toMatch(expected);
    expect(words(bytes)).toContain('Picture "IMG_1.jpg": ');
  });

  test("a name that is none of its own: the bytes decide", () => {
    expect(words(Buffer.from("<script>planted()</script>"), "fish.jpg")).toMatch(/text/);
    expect(words(PNG, "notes.html")).toBe("kept");
  });

  test("too many bytes, too many pixels", () => {
    const long = Buffer.concat([JPEG, Buffer.alloc(MOST_PICTURE_BYTES)]);
    expect(words(long)).toMatch(/has 10\.0 MiB, up to 10 MiB are taken/);
    const wide = Buffer.from(PNG);
    wide.writeUInt32BE(20_000, 16);
    expect(words(wide)).toMatch(/is 20000 by 16 pixels/);
    wide.writeUInt32BE(16_000, 16);
    wide.writeUInt32BE(16_000, 20);
    expect(words(wide)).toMatch(/up to 100 million/);
  });

  test("a moving WebP", () => {
    const moving = Buffer.from(webpOfPhone());
    moving[20] = (moving[20] ?? 0) | 2;
    expect(words(moving)).toMatch(/moves/);
  });

  test("every file cut short, wherever", () => {
    for (const plain of Object.values(PLAIN)) {
      for (let end = 0; end < plain.length; end += 1) expect(words(plain.subarray(0, end))).not.toBe("kept");
    }
  });
});

describe("whatever comes", () => {
  const spoilt = fc
    .tuple(
      fc.constantFrom(...Object.values(OF_PHONE), ...Object.values(PLAIN)),
      fc.array(fc.tuple(fc.nat(), fc.nat(255)), { maxLength: 12 }),
      fc.nat(),
    )
    .map(([bytes, changes, cut]) => {
      const copy = Buffer.from(bytes);
      for (const [at, value] of changes) copy[at % copy.length] = value;
      return cut % 3 === 0 ? copy.subarray(0, cut % copy.length) : copy;
    });

  test("nothing throws, and what is kept is stripped and is kept again as it is", () => {
    fc.assert(
      fc.property(fc.oneof(spoilt, fc.uint8Array({ maxLength: 400 })), (bytes) => {
        const one = read(bytes);
        if (!one.ok) {
          expect(one.message.text.length).toBeGreaterThan(10);
          return;
        }
        expect(one.picture.bytes.length).toBeLessThanOrEqual(bytes.length + 40);
        const again = read(one.picture.bytes);
        expect(again).toEqual(one);
      }),
      { numRuns: 3_000 },
    );
  });

  test("segments of any content, anywhere between those of the image, are not left", () => {
    const secret = fc.uint8Array({ minLength: 8, maxLength: 60 });
    const code = fc.constantFrom(0xe0, 0xe1, 0xe2, 0xe5, 0xec, 0xed, 0xee, 0xef, 0xf0, 0xfd, 0xfe);
    const places: number[] = [2];
    for (let at = 2; JPEG[at + 1] !== 0xda; places.push(at)) at += 2 + JPEG.readUInt16BE(at + 2);
    fc.assert(
      fc.property(code, secret, fc.constantFrom(...places), (marker, hidden, at) => {
        const body = Buffer.concat([Buffer.from("secret-"), hidden]);
        const added = Buffer.from([0xff, marker, 0, body.length + 2, ...body]);
        const whole = Buffer.concat([JPEG.subarray(0, at), added, JPEG.subarray(at)]);
        expect(kept(whole).equals(kept(JPEG))).toBe(true);
      }),
    );
  });
});
