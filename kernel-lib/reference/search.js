// The index holds words without signs at their ends: what is looked for is looked for so too, "kg/m³" as "kg/m", and nothing is
// taken for an operator. What stands in the field stays as it was typed.
const field = document.getElementById("tsd-search-input");
if (field !== null) {
  const { get, set } = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value");
  Object.defineProperty(field, "value", {
    set,
    get() {
      return get
        .call(this)
        .split(/[\s-]+/)
        .map((word) => word.replace(/^\W+|\W+$/g, "").replace(/[:^~*+]/g, "*"))
        .join(" ");
    },
  });
}
