/**
 * Feed that the fish of a tank eat in a day, in the unit that it is given in: of what they could take a share is missed,
 * and no more than their largest ration is taken. Nobody eats where no fish live. docs/model/balance.md, "Feed and fish".
 */
export const eatenFeed = (feed: number, appetite: number, missed: number): number =>
  feed > 0 && appetite > 0 ? (1 - missed) * feed * (1 + (feed / appetite) ** 4) ** -0.25 : 0;
