/** `count` of the items, drawn by a seed (Lehmer 1951), in their own order. */
export function sampleOf(items, count, seed) {
  let state = (seed * 2654435761) % 2147483647 || 1;
  const drawn = items.map((item, place) => {
    state = (state * 48271) % 2147483647;
    return { item, place, rank: state };
  });
  return drawn
    .sort((one, other) => one.rank - other.rank)
    .slice(0, count)
    .sort((one, other) => one.place - other.place)
    .map(({ item }) => item);
}
