/** Need, delivery and tank drawn, with the same numbers in tables; and a store that a ram draws down. */
import type { WaterPlan } from '@fallwright/engine';
import {
  dayChart,
  dayChartInWords,
  hourRows,
  isOverADay,
  monthName,
  monthRows,
  PLAN_CHART_HEIGHTS,
  SURFACE_CHART_HEIGHT,
  surfaceChart,
  surfaceChartInWords,
  yearChart,
  yearChartInWords,
} from '@fallwright/papers';
import type { System } from '@fallwright/units';
import { unitShown } from '@fallwright/units';
import type { SiteAnswer } from '../answer/site-answer.ts';
import { ChartSvg } from './chart-svg.tsx';
import './water.css';

export function WaterDrawn({
  shown,
  system,
}: {
  readonly shown: SiteAnswer;
  readonly system: System;
}) {
  const { plan } = shown;
  return (
    <>
      <StoreDrawn shown={shown} system={system} />
      {plan !== undefined && (
        <>
          <Year plan={plan} system={system} />
          <Day plan={plan} system={system} />
        </>
      )}
    </>
  );
}

function StoreDrawn({
  shown: { answer, installation },
  system,
}: {
  readonly shown: SiteAnswer;
  readonly system: System;
}) {
  const { emptying } = answer;
  const { source } = installation;
  if (emptying === undefined || source.kind !== 'store') return null;
  const depth = source.depthOverIntake;
  return (
    <figure className="need-figure of-store">
      <figcaption>
        <h3>{isOverADay(emptying) ? 'The store over a day' : 'The store from full'}</h3>
      </figcaption>
      <ChartSvg
        words={surfaceChartInWords(emptying, depth, system)}
        height={SURFACE_CHART_HEIGHT}
        layOut={(width) => surfaceChart(emptying, depth, { width, system })}
      />
      <p className="note">{surfaceChartInWords(emptying, depth, system)}</p>
    </figure>
  );
}

function Year({ plan, system }: { readonly plan: WaterPlan; readonly system: System }) {
  const rows = monthRows(plan, system);
  const volume = unitShown('volume', system);
  return (
    <figure className="need-figure">
      <figcaption>
        <h3>The year</h3>
      </figcaption>
      <ChartSvg
        words={yearChartInWords(plan, system)}
        height={PLAN_CHART_HEIGHTS.year}
        layOut={(width) => yearChart(plan, { width, system })}
      />
      <NumbersTable
        summary="The year in numbers"
        note={`Needed and comes: ${unitShown('daily', system)}. The rest: ${volume} in the month, and in the tank as it ends.`}
        heads={['month', 'needed', 'comes', 'share', 'days met', 'runs over', 'missing', 'in tank']}
        rows={rows.map((row) => [
          row.month.slice(0, 3),
          row.needed,
          row.comes,
          row.share,
          row.daysMet,
          row.runsOver,
          row.missing,
          row.inTank,
        ])}
      />
    </figure>
  );
}

function Day({ plan, system }: { readonly plan: WaterPlan; readonly system: System }) {
  const rows = hourRows(plan, system);
  const month = monthName(plan.hardestMonth);
  const isAlike = plan.months.every(({ share }) => share === plan.months[0]?.share);
  return (
    <figure className="need-figure">
      <figcaption>
        <h3>{isAlike ? 'A day' : `A day in ${month}, when it is hardest`}</h3>
      </figcaption>
      <ChartSvg
        words={dayChartInWords(plan, system)}
        height={PLAN_CHART_HEIGHTS.day}
        layOut={(width) => dayChart(plan, { width, system })}
      />
      <NumbersTable
        summary="The day in numbers"
        note={`All in ${unitShown('volume', system)}; in the tank as the hour ends. A day like the days before it.`}
        heads={['hour', 'comes', 'drawn', 'runs over', 'missing', 'in tank']}
        rows={rows.map((row) => [
          row.hour,
          row.comes,
          row.drawn,
          row.runsOver,
          row.missing,
          row.inTank,
        ])}
      />
    </figure>
  );
}

function NumbersTable({
  summary,
  note,
  heads,
  rows,
}: {
  readonly summary: string;
  readonly note: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}) {
  return (
    <details className="need-numbers">
      <summary>{summary}</summary>
      <p className="note">{note}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: wider than a phone, it is scrolled, by keys too */}
      <section className="need-table" aria-label={summary} tabIndex={0}>
        <table>
          <thead>
            <tr>
              {heads.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([first, ...cells]) => (
              <tr key={first}>
                <th scope="row">{first}</th>
                {cells.map((cell, index) => (
                  <td key={heads[index + 1]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
