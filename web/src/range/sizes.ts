/** Nominal sizes with the inch sizes people call them by. Source: ISO 6708 and ASME B36.10M pair them so (memory). */
export const SIZES = [
  { value: 'DN15', label: 'DN15, 1/2 in' },
  { value: 'DN20', label: 'DN20, 3/4 in' },
  { value: 'DN25', label: 'DN25, 1 in' },
  { value: 'DN32', label: 'DN32, 1 1/4 in' },
  { value: 'DN40', label: 'DN40, 1 1/2 in' },
  { value: 'DN50', label: 'DN50, 2 in' },
  { value: 'DN65', label: 'DN65, 2 1/2 in' },
  { value: 'DN80', label: 'DN80, 3 in' },
  { value: 'DN100', label: 'DN100, 4 in' },
];
