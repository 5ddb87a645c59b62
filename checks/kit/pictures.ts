/**
 * Pictures for checks: five small ones, 24 by 16 pixels of one colour run, as three kinds of file (made once by
 * ImageMagick and cwebp), and the same with all that a phone adds: place, time, maker, a preview, a film behind the end.
 */
import { crc32 } from "node:zlib";

const bytesOf = (...lines: readonly string[]): Buffer => Buffer.from(lines.join(""), "base64");

export const JPEG = bytesOf(
  "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAA0JCgsKCA0LCgsODg0PEyAVExISEyccHhcgLikxMC4pLSwzOko+MzZGNywtQFdBRkxO",
  "UlNSMj5aYVpQYEpRUk//2wBDAQ4ODhMREyYVFSZPNS01T09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09P",
  "T09PT09PT0//wAARCAAQABgDASIAAhEBAxEB/8QAFgABAQEAAAAAAAAAAAAAAAAAAAQG/8QAFhABAQEAAAAAAAAAAAAAAAAAABNh",
  "/8QAFQEBAQAAAAAAAAAAAAAAAAAAAAX/xAAWEQADAAAAAAAAAAAAAAAAAAAAFWH/2gAMAwEAAhEDEQA/AMxbS2oLFlhDC+6pfbRB",
  "YEMDqn//2Q==",
);
export const PROGRESSIVE = bytesOf(
  "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAA0JCgsKCA0LCgsODg0PEyAVExISEyccHhcgLikxMC4pLSwzOko+MzZGNywtQFdBRkxO",
  "UlNSMj5aYVpQYEpRUk//2wBDAQ4ODhMREyYVFSZPNS01T09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09P",
  "T09PT09PT0//wgARCAAQABgDASIAAhEBAxEB/8QAFgABAQEAAAAAAAAAAAAAAAAAAAMF/8QAFQEBAQAAAAAAAAAAAAAAAAAAAAT/",
  "2gAMAwEAAhADEAAAActBZfdAf//EABUQAQEAAAAAAAAAAAAAAAAAAAAR/9oACAEBAAEFAqqqqv/EABURAQEAAAAAAAAAAAAAAAAA",
  "AAAU/9oACAEDAQE/AbVr/8QAFREBAQAAAAAAAAAAAAAAAAAAABT/2gAIAQIBAT8BgQP/xAAUEAEAAAAAAAAAAAAAAAAAAAAg/9oA",
  "CAEBAAY/Al//xAAUEAEAAAAAAAAAAAAAAAAAAAAg/9oACAEBAAE/IV//AP/aAAwDAQACAAMAAAAQxx//xAAVEQEBAAAAAAAAAAAA",
  "AAAAAAAAcf/aAAgBAwEBPxClP//EABURAQEAAAAAAAAAAAAAAAAAAABx/9oACAECAQE/EIQ//8QAFhABAQEAAAAAAAAAAAAAAAAA",
  "cQAg/9oACAEBAAE/EFKWB//Z",
);
export const PNG = bytesOf(
  "iVBORw0KGgoAAAANSUhEUgAAABgAAAAQCAMAAAA7+k+nAAAABGdBTUEAALGPC/xhBQAAACBjSFJNAAB6JgAAgIQAAPoAAACA6AAA",
  "dTAAAOpgAAA6mAAAF3CculE8AAAAM1BMVEX/AADuABHdACLMADO7AESqAFWZAGaIAHd3AIhmAJlVAKpEALszAMwiAN0RAO4AAP//",
  "///e28aKAAAAAWJLR0QQlbINLAAAAAd0SU1FB+oLGwgGEbk6pQcAAAAuSURBVBjTdcEFAQAgAMCw4w7925LgG5ggiIIkyIIiqIIm",
  "6IIhmIIl2IIjuIInPq77C0FFB197AAAAJXRFWHRkYXRlOmNyZWF0ZQAyMDI2LTExLTI3VDA4OjA2OjE3KzAwOjAwuz1y5AAAACV0",
  "RVh0ZGF0ZTptb2RpZnkAMjAyNi0xMS0yN1QwODowNjoxNyswMDowMMpgylgAAAAASUVORK5CYII=",
);
export const WEBP = bytesOf(
  "UklGRl4AAABXRUJQVlA4IFIAAACwAwCdASoYABAAPtFWo0u/pKMhsAgD8BoJbDuAGMeQdwf4AB7UYAD+7ts/z2h8AMiCd/cUScad",
  "Z/8lkh+9eSn0cvjXrhdI3p8S6ThAB2yUKoAA",
);
export const WEBP_LOSSLESS = bytesOf(
  "UklGRkwAAABXRUJQVlA4TEAAAAAvF8ADAH8AEIT/cQsT8ff/+U+WAVVk21BBBRVUUEEFFVRQQQUVVFBBBRX8bYaI/ufn4+Xh5uLk",
  "YGdjZWFmYmQg",
);

/** Words that stand in what is added, in every place: none may be left. */
export const TELLTALES = [
  ...["Telltale Camera", "GPS-52.5200N", "2026:06:14 21:30:00", "telltale comment", "telltale film"],
  ...["Exif\0\0II", "http://ns.adobe.com/xap", "Photoshop 3.0", "ICC_PROFILE", "MPF\0"],
] as const;
const WORDS = "Telltale Camera GPS-52.5200N 2026:06:14 21:30:00";

/** A TIFF block as cameras write it, little end first: maker, which way up, and the rest of the words. */
function exif(orientation: number): Buffer {
  const tag = (id: number, type: number, count: number, value: number): Buffer => {
    const one = Buffer.alloc(12);
    one.writeUInt16LE(id, 0);
    one.writeUInt16LE(type, 2);
    one.writeUInt32LE(count, 4);
    one.writeUInt32LE(value, 8);
    return one;
  };
  const count = Buffer.from([2, 0]);
  const data = 8 + 2 + 2 * 12 + 4;
  return Buffer.concat([
    Buffer.from("II*\0\x08\0\0\0", "latin1"),
    count,
    tag(0x010f, 2, WORDS.length, data),
    tag(0x0112, 3, 1, orientation),
    Buffer.alloc(4),
    Buffer.from(WORDS),
  ]);
}

const segment = (code: number, body: Buffer | string): Buffer => {
  const bytes = Buffer.from(body as string, "latin1");
  const head = Buffer.from([0xff, code, 0, 0]);
  head.writeUInt16BE(bytes.length + 2, 2);
  return Buffer.concat([head, bytes]);
};

/** As a phone sends it. `plain` is one of the JPEG files above. */
export function jpegOfPhone(plain: Buffer, orientation = 1): Buffer {
  return Buffer.concat([
    plain.subarray(0, 2),
    segment(0xe1, Buffer.concat([Buffer.from("Exif\0\0", "latin1"), exif(orientation)])),
    segment(0xe1, `http://ns.adobe.com/xap/1.0/\0<x>${WORDS}</x>`),
    segment(0xe2, `ICC_PROFILE\0\x01\x01${WORDS}`),
    segment(0xe2, `MPF\0${WORDS}`),
    segment(0xed, `Photoshop 3.0\0${WORDS}`),
    segment(0xee, "Adobe\0\x64\0\0\0\0\x01"),
    segment(0xef, WORDS),
    segment(0xfe, "telltale comment"),
    plain.subarray(2),
    // A second picture, and a film, as phones hang them behind the end.
    plain,
    Buffer.from(`ftypmp42 telltale film ${WORDS}`),
  ]);
}

const pngChunk = (name: string, body: Buffer | string): Buffer => {
  const named = Buffer.concat([Buffer.from(name, "latin1"), Buffer.from(body as string, "latin1")]);
  const around = Buffer.alloc(8);
  around.writeUInt32BE(named.length - 4, 0);
  around.writeUInt32BE(crc32(named), 4);
  return Buffer.concat([around.subarray(0, 4), named, around.subarray(4)]);
};

/** After the header of 33 bytes, and behind the end. */
export const pngOfPhone = (plain: Buffer = PNG): Buffer =>
  Buffer.concat([
    plain.subarray(0, 33),
    pngChunk("eXIf", exif(6)),
    pngChunk("tEXt", `Comment\0telltale comment ${WORDS}`),
    pngChunk("iTXt", `XML:com.adobe.xmp\0\0\0\0\0${WORDS}`),
    pngChunk("tIME", "\x07\xea\x06\x0e\x15\x1e\0"),
    pngChunk("acTL", "\0\0\0\x01\0\0\0\0"),
    pngChunk("prVt", WORDS),
    plain.subarray(33),
    Buffer.from(`telltale film ${WORDS}`),
  ]);

const webpChunk = (name: string, body: Buffer | string): Buffer => {
  const bytes = Buffer.from(body as string, "latin1");
  const head = Buffer.from(`${name}\0\0\0\0`, "latin1");
  head.writeUInt32LE(bytes.length, 4);
  return Buffer.concat([head, bytes, Buffer.alloc(bytes.length % 2)]);
};

/** In the extended form, 24 by 16. */
export function webpOfPhone(plain: Buffer = WEBP, orientation = 1): Buffer {
  const body = Buffer.concat([
    Buffer.from("WEBP"),
    webpChunk("VP8X", Buffer.from([0x2c, 0, 0, 0, 23, 0, 0, 15, 0, 0])),
    webpChunk("ICCP", `ICC_PROFILE${WORDS}`),
    plain.subarray(12),
    webpChunk("EXIF", exif(orientation)),
    webpChunk("XMP ", `http://ns.adobe.com/xap/1.0/\0${WORDS}`),
    webpChunk("????", WORDS),
  ]);
  const head = Buffer.from("RIFF\0\0\0\0", "latin1");
  head.writeUInt32LE(body.length, 4);
  return Buffer.concat([head, body, Buffer.from(`telltale film ${WORDS}`)]);
}
