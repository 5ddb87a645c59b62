/**
 * The water sums worked out on this device, where the network is gone: the server's own pages from the same code. A script
 * of its own, which the service worker takes in when it is installed and runs when it is first needed.
 */
import { assetsOf } from "../assets.ts";
import { renderDocument } from "../layout.tsx";
import { notFoundPage } from "../pages/message.tsx";
import { sumsReply } from "../pages/sum-pages.ts";
import { renderPart } from "../part.tsx";
import type { SumsHere } from "./sums-asked.ts";

const answer: SumsHere = ({ asked, scene, address, today, part, built }) => {
  const reply = sumsReply(asked, scene);
  if (reply.kind === "redirect") return reply;
  const page = reply.kind === "page" ? reply.page : notFoundPage(reply.what);
  const status = reply.kind === "page" ? (reply.status ?? 200) : 404;
  const html = part ? renderPart(page) : renderDocument(page, assetsOf(built), { address, today });
  return { kind: "html", html, status };
};

(globalThis as { grazewellSums?: SumsHere }).grazewellSums = answer;
