/** Animals: the field guide, for one tank and without one. */
import { animalById, animals } from "../../catalogue/index.ts";
import { to } from "../../web/page.ts";
import { animalPage } from "../../web/pages/animal.tsx";
import { animalsPage } from "../../web/pages/animals.tsx";
import { guidePage } from "../../web/pages/guide.tsx";
import type { PageReply, PageRequest, PageRoute } from "../route.ts";
import { answeredPage } from "./answered.ts";
import { worksOf } from "./sources.ts";

const searchOf = ({ query }: PageRequest): string => (query["search"] ?? "").trim();
const searched = (address: string, search: string): string =>
  search === "" ? address : `${address}?search=${encodeURIComponent(search)}`;

const NOT_IN_LIST: PageReply = { kind: "not_found", what: "animal of that name in our list" };

export const ANIMALS_ROUTES: readonly PageRoute[] = [
  answeredPage({
    path: "/tanks/:tank/animals",
    here: "animals",
    what: "Animals",
    address: (tank, request) => searched(to.tank(tank, "animals"), searchOf(request)),
    draw: ({ loaded, answers, request }) =>
      animalsPage({ head: loaded.head, answers, search: searchOf(request) }),
  }),
  answeredPage({
    path: "/tanks/:tank/animals/:animal",
    here: "animals",
    what: "One animal",
    address: (tank, { params }) => to.animal(tank, params["animal"] ?? ""),
    draw: ({ loaded, answers, request }) => {
      const animal = animalById.get(request.params["animal"] ?? "");
      const row = answers.animals.animals.find(({ id }) => id === animal?.id);
      if (animal === undefined || row === undefined) return NOT_IN_LIST;
      const here = { head: loaded.head, row, asOf: answers.waves.tank.as_of };
      return animalPage({ animal, sources: worksOf(animal), here });
    },
  }),
  {
    method: "GET",
    path: "/animals",
    answer: async (request) => ({ kind: "page", page: guidePage({ animals, search: searchOf(request) }) }),
  },
  {
    method: "GET",
    path: "/animals/:animal",
    answer: async ({ params }) => {
      const animal = animalById.get(params["animal"] ?? "");
      if (animal === undefined) return NOT_IN_LIST;
      return { kind: "page", page: animalPage({ animal, sources: worksOf(animal), here: null }) };
    },
  },
];
