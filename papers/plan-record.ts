/** The plan of a place's water for programs: months January first, hours from midnight. */
import { inMonth, MONTHS, type TankFlows, type WaterPlan } from '@fallwright/engine';
import { toLitres, toLitresPerDay } from '@fallwright/units';
import { hasSeasons } from './water-plan-of.ts';

const DAY = 86_400;

export function planRecord(plan: WaterPlan) {
  const { months, year, day, daily, reserve } = plan;
  return {
    hasSeasons: hasSeasons(plan),
    tankLitres: litres(plan.volume),
    isTankGiven: plan.isVolumeGiven,
    dayTankLitres: litres(daily.volume),
    dayTank: daily.kind,
    reserveDays: reserve ? figures(reserve.standstill / DAY) : null,
    reserveLitres: reserve ? litres(reserve.volume) : null,
    lastsDays: plan.lasts === undefined ? null : figures(plan.lasts / DAY),
    daysMet: year.metCount,
    months: MONTHS.map((month, index) => {
      const { needed, delivered, isMet } = inMonth(months, index);
      const balance = inMonth(year.months, index);
      return {
        month,
        neededLitresPerDay: figures(toLitresPerDay(needed)),
        deliveredLitresPerDay: figures(toLitresPerDay(delivered)),
        isMet,
        days: balance.dayCount,
        daysMet: balance.metCount,
        ...flowsRecord(balance),
        lowestLitres: litres(balance.lowest),
      };
    }),
    day: {
      month: MONTHS[plan.hardestMonth] ?? '',
      startLitres: litres(day.start),
      hours: day.steps.map(flowsRecord),
    },
  };
}

function flowsRecord({ delivered, drawn, overflow, shortfall, stored }: TankFlows) {
  return {
    deliveredLitres: litres(delivered),
    drawnLitres: litres(drawn),
    overflowLitres: litres(overflow),
    missingLitres: litres(shortfall),
    storedLitres: litres(stored),
  };
}

/** Six figures, as everywhere in the answer; less than a microlitre is what rounding leaves. */
function litres(volume: number): number {
  return Math.abs(volume) < 1e-9 ? 0 : figures(toLitres(volume));
}

function figures(value: number): number {
  return Number(value.toPrecision(6));
}
