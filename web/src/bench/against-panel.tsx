/** Measured against predicted: the picture of a test, and its readings in a table. */
import type { AgainstCurve } from '@fallwright/papers';
import { againstInWords, curveLifts, testPicture } from '@fallwright/papers';
import { formatNumber, unitShown } from '@fallwright/units';
import { useEffect, useMemo } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { useWidth } from '../beat/use-width.ts';
import { Drawn } from '../drawn/drawn.tsx';
import { textOf } from '../state/entry.ts';
import type { PlainRecord, SiteDocument } from '../state/site-document.ts';
import { isRecord } from '../state/site-document.ts';
import { answerTo, pointOf, signedPerCent } from './against.ts';
import { curveKey, useBenchRoom } from './bench-room.ts';
import { readingsIn } from './test-document.ts';
import type { ReadReading, ReadTest } from './test-reading.ts';

export function AgainstPanel({ read }: { readonly read: ReadTest }) {
  const { place, settings } = useNotebook();
  const { answers, curves } = useBenchRoom();
  const document = useStore(place, (state) => state.document);
  const system = useStore(settings, (state) => state.system);
  const known = useStore(answers.outcomes, (outcomes) => outcomes);
  const knownCurves = useStore(curves.outcomes, (outcomes) => outcomes);
  const { ref, width } = useWidth<HTMLDivElement>();
  const wanted = useMemo(() => linesOf(read.readings, document), [read, document]);
  useEffect(() => curves.want(wanted.map(({ key }) => key)), [curves, wanted]);
  const points = read.readings.flatMap(
    (reading, index) => pointOf(reading, known, String(index + 1)) ?? [],
  );
  const lines = wanted.flatMap(({ key, label }): AgainstCurve[] => {
    const outcome = knownCurves.get(key);
    return outcome?.kind === 'known' ? [{ label, points: outcome.value }] : [];
  });
  const good = read.readings.filter(({ ok }) => ok).length;
  return (
    <section className="against" aria-labelledby="against-title">
      <h2 id="against-title">Measured against predicted</h2>
      <div ref={ref} className="against-picture">
        {width > 0 && points.length > 0 && (
          <Drawn
            drawing={testPicture({ points, curves: lines }, { width, system })}
            name={againstInWords(points, system)}
          />
        )}
      </div>
      {points.length > 0 && (
        <p className="note">
          Bars and band hold the truth eight times in ten, by what the readings and the fall are
          good to.
        </p>
      )}
      {points.length === 0 && (
        <p className="note">
          {good === 0
            ? 'Once a reading has its lift and something read, it stands here beside its prediction.'
            : 'Once a delivered flow is read, it stands here over its lift.'}
        </p>
      )}
      {good > 0 && <ReadingTable read={read} />}
    </section>
  );
}

interface WantedLine {
  readonly key: string;
  readonly label: string;
}

/** One line for each way the ram was set up. */
function linesOf(readings: readonly ReadReading[], document: SiteDocument): readonly WantedLine[] {
  const forms = readingsIn(document);
  const groups = new Map<string, { label: string; asked: string; lifts: number[]; fall: number }>();
  for (const [index, reading] of readings.entries()) {
    if (!reading.ok || reading.setting.reading.deliveryFlow === undefined) continue;
    const form = forms[index] ?? {};
    const { lift, fall } = reading.setting.reading;
    const set = JSON.stringify([form.tuning, form.temperature, reading.setting.head]);
    const group = groups.get(set);
    if (group === undefined) {
      const label = tuningInWords(form);
      groups.set(set, { label, asked: reading.asked, lifts: [lift.value], fall: fall.value });
    } else group.lifts.push(lift.value);
  }
  const isOne = groups.size === 1;
  return [...groups.values()].map(({ label, asked, lifts, fall }) => ({
    key: curveKey({ test: withoutWhatWasRead(asked), lifts: curveLifts(lifts, fall) }),
    label: isOne ? '' : label,
  }));
}

/** The line rests on rig, ram and tuning: another delivered flow must not run it again. */
function withoutWhatWasRead(asked: string): string {
  const test = JSON.parse(asked) as SiteDocument;
  const [form = {}] = readingsIn(test);
  const kept = ['tuning', 'temperature', 'lift', 'backPressure'].flatMap((key) =>
    form[key] === undefined ? [] : [[key, form[key]]],
  );
  // A reading without anything read is none, so that a rate stands in it that plays no part.
  return JSON.stringify({ ...test, readings: [{ ...Object.fromEntries(kept), beats: '60/min' }] });
}

function tuningInWords({ tuning }: PlainRecord): string {
  if (!isRecord(tuning)) return 'as it is built';
  return ['stroke', 'weight']
    .flatMap((key) => (tuning[key] === undefined ? [] : [`${key} ${textOf(tuning[key])}`]))
    .join(', ');
}

function ReadingTable({ read }: { readonly read: ReadTest }) {
  const { settings } = useNotebook();
  const { answers } = useBenchRoom();
  const system = useStore(settings, (state) => state.system);
  const known = useStore(answers.outcomes, (outcomes) => outcomes);
  const flow = unitShown('sourceFlow', system);
  return (
    <div className="bench-scroll">
      <table className="bench-table">
        <caption className="for-ears">Readings, measured against predicted</caption>
        <thead>
          <tr>
            <th scope="col">
              <span aria-hidden="true">No.</span>
              <span className="for-ears">Reading</span>
            </th>
            <th scope="col" className="r">
              Lift<span className="unit">{unitShown('height', system)}</span>
            </th>
            <th scope="col" className="r">
              Beats<span className="unit">a minute</span>
            </th>
            <th scope="col" className="r">
              Delivered<span className="unit">{flow}</span>
            </th>
            <th scope="col" className="r">
              Predicted<span className="unit">{flow}</span>
            </th>
            <th scope="col" className="r">
              Gap
            </th>
          </tr>
        </thead>
        <tbody>
          {read.readings.map((reading, index) => {
            const number = index + 1;
            if (!reading.ok) {
              return (
                <tr key={number}>
                  <th scope="row">{number}</th>
                  <td colSpan={5} className="note">
                    not whole yet
                  </td>
                </tr>
              );
            }
            const { lift, beatFrequency, deliveryFlow } = reading.setting.reading;
            const predicted = answerTo(reading, known)?.predicted;
            const residual = predicted?.residuals.find(
              ({ quantity }) => quantity === 'deliveryFlow',
            );
            return (
              <tr key={number}>
                <th scope="row">{number}</th>
                <td className="r">{formatNumber(lift.value, 'height', system)}</td>
                <td className="r">
                  {beatFrequency === undefined
                    ? '–'
                    : formatNumber(beatFrequency.value, 'beats', system)}
                </td>
                <td className="r">
                  {deliveryFlow === undefined
                    ? '–'
                    : formatNumber(deliveryFlow.value, 'sourceFlow', system)}
                </td>
                <td className="r">
                  {predicted === undefined
                    ? '…'
                    : predicted.runs
                      ? formatNumber(predicted.point.deliveryFlow, 'sourceFlow', system)
                      : 'stops'}
                </td>
                <td className={residual?.agrees === false ? 'r is-off' : 'r'}>
                  {residual === undefined ? '–' : signedPerCent(residual.share)}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
