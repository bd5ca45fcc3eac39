/** js-quantities ships no types; this is the one corner of it that we use. */
declare module 'js-quantities' {
  interface Quantity {
    to(unit: string): Quantity;
    readonly scalar: number;
  }
  type QuantityMaker = (value: number, unit: string) => Quantity;
  const Qty: QuantityMaker;
  export default Qty;
}
