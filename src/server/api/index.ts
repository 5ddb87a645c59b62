/** Routes of the HTTP API: each operation of the contract with its handler. */
import { createHash } from "node:crypto";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { ENGINE_VERSION } from "../../answers/version.ts";
import { readJson } from "../../contract/http/json.ts";
import { API_ROOT, openApi } from "../../contract/http/openapi.ts";
import type { Operation } from "../../contract/http/operation.ts";
import { OPERATIONS } from "../../contract/http/operations.ts";
import type { Served } from "../app.ts";
import { LIMITS } from "../limits.ts";
import { sendText } from "../reply.ts";
import * as answers from "./answers.ts";
import * as files from "./bring-in.ts";
import { callOf, type Handler, mend, type Result } from "./call.ts";
import * as care from "./care.ts";
import * as catalogue from "./catalogue.ts";
import * as entries from "./entries.ts";
import * as pictures from "./pictures.ts";
import * as readings from "./readings.ts";
import * as sums from "./sums.ts";
import * as tanks from "./tanks.ts";

const HANDLERS: Readonly<Record<string, Handler>> = {
  about: catalogue.about,
  listTanks: tanks.listTanks,
  addTank: tanks.addTank,
  tank: tanks.oneTank,
  changeTank: tanks.changeTank,
  takeTankAway: tanks.takeTankAway,
  bringTankBack: tanks.bringTankBack,
  tankHistory: tanks.tankHistory,
  listReadings: readings.listReadings,
  addReading: readings.addReading,
  reading: readings.oneReading,
  correctReading: readings.correctReading,
  takeReadingAway: readings.takeReadingAway,
  bringReadingBack: readings.bringReadingBack,
  readingHistory: readings.readingHistory,
  listEntries: entries.listEntries,
  addEntry: entries.addEntry,
  entry: entries.oneEntry,
  correctEntry: entries.correctEntry,
  takeEntryAway: entries.takeEntryAway,
  bringEntryBack: entries.bringEntryBack,
  entryHistory: entries.entryHistory,
  listPictures: pictures.listPictures,
  addPicture: pictures.addPicture,
  takePictureAway: pictures.takePictureAway,
  bringPictureBack: pictures.bringPictureBack,
  previewBringIn: files.previewBringIn,
  bringIn: files.bringFileIn,
  listActs: files.listActs,
  undoAct: files.undoAct,
  takeOut: files.takeOut,
  larderOfTank: answers.larderOfTank,
  wavesOfTank: answers.wavesOfTank,
  aheadOfTank: answers.aheadOfTank,
  animalsOfTank: answers.animalsOfTank,
  workingsOfTank: answers.workingsOfTank,
  workingOfTank: answers.workingOfTank,
  check: answers.check,
  answers: answers.answers,
  animals: catalogue.animals,
  animal: catalogue.animal,
  parameters: catalogue.parameters,
  parameter: catalogue.parameter,
  sources: catalogue.sources,
  source: catalogue.source,
  startUpOfTank: care.startUpOfTank,
  arrivalsOfTank: care.arrivalsOfTank,
  feedingOfTank: care.feedingOfTank,
  holidayOfTank: care.holidayOfTank,
  weeksOfTank: care.weeksOfTank,
  almanacOfTank: care.almanacOfTank,
  wrongLists: care.wrongLists,
  wrongList: care.wrongList,
  wrongListOfTank: care.wrongListOfTank,
  listSums: sums.listSums,
  workOutSum: sums.workOutSum,
};

export function addApi(app: FastifyInstance, served: Served): void {
  app.addContentTypeParser(
    "application/json",
    { parseAs: "string" },
    async (_request: FastifyRequest, text: string) => {
      const read = readJson(text);
      if (read.ok) return read.value;
      const { pointer, kind, message, typed } = read.fault;
      throw mend(400, [{ pointer, kind, detail: message, typed, allowed: [], choices: [] }]);
    },
  );
  for (const operation of OPERATIONS) addOperation(app, operation, served);
  const description = JSON.stringify(openApi(ENGINE_VERSION), null, 1);
  app.get(`${API_ROOT}/openapi.json`, async (request, reply) =>
    sendText(description, "application/json; charset=utf-8", 200, request, reply),
  );
}

function addOperation(app: FastifyInstance, operation: Operation, served: Served): void {
  const handler = HANDLERS[operation.id];
  if (handler === undefined) throw new Error(`Cannot serve ${operation.id}: no handler`);
  app.route({
    method: operation.method,
    url: `${API_ROOT}${operation.path.replaceAll(/\{(\w+)\}/g, ":$1")}`,
    config: { changes: operation.changes },
    ...(operation.takes === "file" ? { bodyLimit: LIMITS.fileBytes } : {}),
    handler: async (request, reply) => {
      const result = await handler(callOf(operation, request, served, () => fingerprintOf(request)));
      return await send(result, request, reply);
    },
  });
}

/** Tells one request from another under the same key. */
const fingerprintOf = ({ method, url, body }: FastifyRequest): string =>
  createHash("sha256")
    .update(JSON.stringify([method, url, body]))
    .digest("base64url");

const JSON_TYPE = "application/json; charset=utf-8";

async function send(
  { status, body, version, location }: Result,
  request: FastifyRequest,
  reply: FastifyReply,
) {
  if (location !== undefined) reply.header("location", location);
  const text = typeof body === "object" && body !== null ? textOf(body) : JSON.stringify(body);
  if (version === undefined) return await sendText(text, JSON_TYPE, status, request, reply);
  const tag = `"${version}"`;
  reply.header("etag", tag).header("cache-control", "private, no-cache");
  if (request.method === "GET" && request.headers["if-none-match"] === tag)
    return await reply.code(304).send();
  return await reply.code(status).type(JSON_TYPE).send(text);
}

/** Answers of the engine are asked for again and again, and are long. */
const texts = new WeakMap<object, string>();

function textOf(body: object): string {
  const known = texts.get(body);
  if (known !== undefined) return known;
  const text = JSON.stringify(body);
  texts.set(body, text);
  return text;
}
