/**
 * The waste valve: the valve that beats.
 *
 * Water leaves the ram through the ring between the disc and its seat (the curtain) and through the port behind it.
 * The running water pushes the disc towards its seat; weight or a spring holds it open. All kinds of waste valve are
 * brought to one form, a disc that moves straight between two stops, so that one law of motion serves them all.
 */
import type {
  CubicMetrePerSecond,
  Kilogram,
  KilogramPerCubicMetre,
  Metre,
  Newton,
  Ratio,
  SquareMetre,
} from '../quantities.ts';

interface WasteValveForm {
  /** Diameter of the circle on which the disc seats. */
  readonly seatDiameter: Metre;
  /** Travel of the disc from shut to its open stop. */
  readonly stroke: Metre;
  /** Mass that moves with the disc: disc, stem, added weights. */
  readonly movingMass: Kilogram;
  /** Area of the port that the water passes besides the curtain. */
  readonly portArea: SquareMetre;
  /** Discharge coefficient of the curtain area π d y. */
  readonly curtainCoefficient: Ratio;
  /** Discharge coefficient of the port. */
  readonly portCoefficient: Ratio;
  /** Drag of the disc on the velocity in the gap round it, added to the closing force. */
  readonly dragCoefficient: Ratio;
  /** Free area of the ring between the disc's rim and the chamber around it. */
  readonly gapArea: SquareMetre;
}

/** A disc held open by its weight in water. */
export interface WeightedValve extends WasteValveForm {
  readonly kind: 'weighted';
  /** Weight of the moving parts in water: what holds the valve open. */
  readonly submergedWeight: Newton;
}

/** A disc held open by a spring, whose force may differ between the open and the shut stop. */
export interface SprungValve extends WasteValveForm {
  readonly kind: 'sprung';
  /** Force that holds the valve open when it stands at its open stop; a weight that helps counts in. */
  readonly forceAtOpen: Newton;
  /** Force towards open when it is shut. */
  readonly forceAtShut: Newton;
}

/**
 * A hinged flap used as waste valve. Its turning is written as a straight stroke at the centre of the flap:
 * `stroke` is the travel of that centre, `movingMass` the flap's moment of inertia over the arm squared, and the
 * moments of its weight at the two stops over the arm are the forces.
 */
export interface SwingValve extends WasteValveForm {
  readonly kind: 'swing';
  readonly forceAtOpen: Newton;
  readonly forceAtShut: Newton;
}

export type WasteValve = WeightedValve | SprungValve | SwingValve;

/** Area that the static head acts on when the valve is shut. */
export function seatArea(valve: WasteValve): SquareMetre {
  return (Math.PI / 4) * valve.seatDiameter ** 2;
}

/** Force towards open at the two stops, whatever makes it. */
export function openingForces(valve: WasteValve): {
  readonly atOpen: Newton;
  readonly atShut: Newton;
} {
  return valve.kind === 'weighted'
    ? { atOpen: valve.submergedWeight, atShut: valve.submergedWeight }
    : { atOpen: valve.forceAtOpen, atShut: valve.forceAtShut };
}

/**
 * Area through which the valve passes water as an ideal orifice, Q = A √(2 g H), at an opening.
 *
 *   1/A² = 1/(C_c π d y)² + 1/(C_p A_port)²
 *
 * Source: two orifices in series, from the energy equation; any text on pipe flow. Coefficients: see the ram's parts.
 */
export function flowArea(valve: WasteValve, opening: Metre): SquareMetre {
  if (opening <= 0) return 0;
  const curtain = valve.curtainCoefficient * Math.PI * valve.seatDiameter * opening;
  const port = valve.portCoefficient * valve.portArea;
  return 1 / Math.sqrt(1 / curtain ** 2 + 1 / port ** 2);
}

/**
 * Closing force of water running through the valve, divided by the flow squared.
 *
 *   F = ρ g H A_seat φ + c_d ½ ρ A_seat (Q/A_gap)²,  φ = A²/curtain²,  H = Q²/(2 g A²)
 *   F/Q² = ½ ρ A_seat [ 1/curtain² + c_d/A_gap² ]
 *
 * φ is the share of the loss that falls across the disc: it tends to 1 as the valve shuts and needs no fitted constant.
 * Source: energy balance of the two orifices; the drag term is Judgement: a disc in a tube does not shut without it.
 */
export function closingForcePerFlowSquared(
  valve: WasteValve,
  opening: Metre,
  density: KilogramPerCubicMetre,
): number {
  const curtain = valve.curtainCoefficient * Math.PI * valve.seatDiameter * opening;
  return (
    0.5 *
    density *
    seatArea(valve) *
    (1 / curtain ** 2 + valve.dragCoefficient / valve.gapArea ** 2)
  );
}

/**
 * Steady flow at which the water lifts the waste valve off its open stop: below it the valve stays open for ever.
 *
 *   Q_c = √( F_open / (F/Q²) )
 *
 * Source: balance of the closing force (see closingForcePerFlowSquared) with the opening force at the open stop.
 */
export function closingFlow(
  valve: WasteValve,
  density: KilogramPerCubicMetre,
): CubicMetrePerSecond {
  const { atOpen } = openingForces(valve);
  if (atOpen <= 0) return 0;
  return Math.sqrt(atOpen / closingForcePerFlowSquared(valve, valve.stroke, density));
}
