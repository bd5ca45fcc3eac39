/** Cautions of the test stand. Common practice, no source. */
export function benchCautions(): readonly string[] {
  return [
    'A ram stores pressure and hammers: keep every part within its rating, fit a relief valve where the delivery can be shut, and never plug the waste valve by hand in the body.',
    'Keep hands, hair and sleeves from the waste valve. Let the pressure off before a joint is opened.',
    'Lift heavy parts with help. Keep mains leads and instruments away from the water.',
    'A prediction beside a measurement proves neither. Local codes and licensed practice come first.',
  ];
}
