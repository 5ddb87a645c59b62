/** Items by a key of theirs, keys in the order they are first met. */
export function grouped<Item, Key>(items: Iterable<Item>, key: (item: Item) => Key): Map<Key, Item[]> {
  const groups = new Map<Key, Item[]>();
  for (const item of items) {
    const group = groups.get(key(item));
    if (group === undefined) groups.set(key(item), [item]);
    else group.push(item);
  }
  return groups;
}
