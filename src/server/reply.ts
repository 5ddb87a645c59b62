/** A page's reply turned into HTTP: documents compressed and with a tag, so that an unchanged page costs 200 bytes. */
import { createHash } from "node:crypto";
import { Readable } from "node:stream";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";
import type { FastifyReply, FastifyRequest } from "fastify";
import { type Assets, renderDocument } from "../web/layout.tsx";
import type { Page } from "../web/page.ts";
import { notFoundPage } from "../web/pages/message.tsx";
import { renderPart } from "../web/part.tsx";
import { encodingFor } from "./assets.ts";
import type { PageReply } from "./route.ts";

const inBrotli = promisify(brotliCompress);
const inGzip = promisify(gzip);
/** Of text worth packing. */
const LEAST_BYTES = 1000;
const QUICK_BROTLI = { params: { [constants.BROTLI_PARAM_QUALITY]: 4 } };

export interface Rendering {
  readonly assets: Assets;
  /** ISO date. */
  readonly today: string;
}

export async function sendReply(
  reply: PageReply,
  request: FastifyRequest,
  http: FastifyReply,
  rendering: Rendering,
): Promise<FastifyReply> {
  switch (reply.kind) {
    case "page":
      return await sendPage(reply.page, reply.status ?? 200, request, http, rendering);
    case "redirect":
      // 303: what was sent is not sent again to the next address.
      return await http.code(303).header("location", reply.to).header("cache-control", "no-store").send();
    case "file":
      http.header("content-disposition", `attachment; filename="${fileName(reply.name)}"`);
      return await sendText(reply.text, reply.type, 200, request, http);
    case "pieces":
      http.header("content-disposition", `attachment; filename="${fileName(reply.name)}"`);
      return await http.type(reply.type).send(Readable.from(reply.pieces));
    case "picture":
      return await sendPicture(reply, request, http, rendering);
    case "not_found":
      return await sendPage(notFoundPage(reply.what), 404, request, http, rendering);
  }
}

/** As what it is and nothing else, wherever it is opened: it loads nothing and runs nothing. */
const PICTURE_POLICY = "default-src 'none'; sandbox; frame-ancestors 'none'";

async function sendPicture(
  { name, type, sha256, read }: Extract<PageReply, { kind: "picture" }>,
  request: FastifyRequest,
  http: FastifyReply,
  rendering: Rendering,
): Promise<FastifyReply> {
  const tag = `"${sha256.slice(0, 32)}"`;
  const known = request.headers["if-none-match"] === tag;
  const image = known ? null : await read();
  if (image === null && !known)
    return await sendPage(notFoundPage("picture of that address"), 404, request, http, rendering);
  http
    .header("content-security-policy", PICTURE_POLICY)
    .header("cache-control", "private, max-age=31536000, immutable")
    .header("etag", tag);
  if (image === null) return await http.code(304).send();
  return await http
    .header("content-type", type)
    .header("content-disposition", `inline; filename="${fileName(name)}"`)
    .send(Buffer.from(image.buffer, image.byteOffset, image.byteLength));
}

export function sendPage(
  page: Page,
  status: number,
  request: FastifyRequest,
  http: FastifyReply,
  { assets, today }: Rendering,
): Promise<FastifyReply> {
  const address = `http://${request.headers.host ?? "localhost"}${request.url}`;
  const html = asPart(request) ? renderPart(page) : renderDocument(page, assets, { address, today });
  return sendText(html, "text/html; charset=utf-8", status, request, http);
}

/** What stands behind the question mark of an address. */
export function queryOf(url: string): URLSearchParams {
  const start = url.indexOf("?");
  return new URLSearchParams(start < 0 ? "" : url.slice(start));
}

/** A client module asks for a page's body alone, to put it into a page that is open already. */
const asPart = ({ url }: FastifyRequest): boolean => queryOf(url).get("part") === "1";

/** Asked again each time, sent again only when changed; kept by nobody in between. */
export async function sendText(
  text: string,
  type: string,
  status: number,
  request: FastifyRequest,
  http: FastifyReply,
): Promise<FastifyReply> {
  http.header("cache-control", "private, no-cache").header("vary", "accept-encoding");
  if (status === 200) {
    const tag = `W/"${createHash("sha256").update(text).digest("base64url").slice(0, 22)}"`;
    http.header("etag", tag);
    if (request.headers["if-none-match"] === tag) return await http.code(304).send();
  }
  http.code(status).header("content-type", type);
  const plain = Buffer.from(text);
  if (plain.length < LEAST_BYTES) return await http.send(plain);
  const encoding = encodingFor(request.headers["accept-encoding"], {
    identity: plain,
    br: plain,
    gzip: plain,
  });
  if (encoding === "identity") return await http.send(plain);
  const packed = encoding === "br" ? await inBrotli(plain, QUICK_BROTLI) : await inGzip(plain);
  return await http.header("content-encoding", encoding).send(packed);
}

/** Letters that every system takes in a file's name; whatever else a tank is called. */
const fileName = (name: string): string =>
  name
    .normalize("NFKD")
    .replace(/[^\w.-]+/g, "-")
    .slice(0, 100);
