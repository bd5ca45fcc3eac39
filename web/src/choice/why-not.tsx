/** Why any other combination lost: thousands of rows, of which those in view are drawn, and found by any words in them. */
import type { System } from '@fallwright/units';
import { useEffect, useId, useRef, useState } from 'react';
import { useMedia } from '../alternatives/use-media.ts';
import type { ChoiceRoom } from './choice-room.ts';
import type { WhyNotPage } from './choice-view.ts';
import { rowsInView } from './rows-in-view.ts';

const ROW = { desk: 58, phone: 132 } as const;
/** Judgement: the pause between two words of a search. */
const REST = 200;

export function WhyNot({
  room,
  system,
  total,
}: {
  readonly room: ChoiceRoom;
  readonly system: System;
  readonly total: number;
}) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="why-not" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Why not another? All {total.toLocaleString('en')} combinations</summary>
      {isOpen && <Rows room={room} system={system} total={total} />}
    </details>
  );
}

function Rows({
  room,
  system,
  total,
}: {
  readonly room: ChoiceRoom;
  readonly system: System;
  readonly total: number;
}) {
  const id = useId();
  const isPhone = useMedia('(max-width: 760px)');
  const rowHeight = isPhone ? ROW.phone : ROW.desk;
  const [typed, setTyped] = useState('');
  const [sought, setSought] = useState('');
  const [page, setPage] = useState<WhyNotPage>({ found: total, from: 0, rows: [] });
  const [scroll, setScroll] = useState({ top: 0, height: 480 });
  const box = useRef<HTMLElement>(null);
  const { from, count } = rowsInView({ ...scroll, rowHeight, total: page.found });

  useEffect(() => {
    const timer = setTimeout(() => {
      setSought(typed);
      box.current?.scrollTo(0, 0);
    }, REST);
    return () => clearTimeout(timer);
  }, [typed]);

  useEffect(() => {
    let isNewest = true;
    room.whyNot(sought, { from, count: Math.max(count, 30), system }).then(
      (next) => {
        if (isNewest) setPage(next);
      },
      () => {},
    );
    return () => {
      isNewest = false;
    };
  }, [room, sought, from, count, system]);

  return (
    <>
      <div className="seek">
        <label>
          <span>Search</span>
          <input
            type="search"
            value={typed}
            placeholder="ram, pipe or reason"
            onChange={(event) => setTyped(event.target.value)}
          />
        </label>
        <p className="note" role="status" id={`${id}-count`}>
          {sought.trim() === ''
            ? `${total.toLocaleString('en')} combinations, the cheapest first`
            : `${page.found.toLocaleString('en')} of ${total.toLocaleString('en')} combinations`}
        </p>
      </div>
      <section
        ref={box}
        className="why-scroll"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and the keyboard must reach it
        tabIndex={0}
        aria-labelledby={`${id}-count`}
        onScroll={(event) => {
          const { scrollTop, clientHeight } = event.currentTarget;
          setScroll({ top: scrollTop, height: clientHeight });
        }}
      >
        <div style={{ height: page.found * rowHeight }} className="why-sheet">
          <table
            className="why-rows"
            aria-rowcount={page.found + 1}
            style={{ transform: `translateY(${page.from * rowHeight}px)` }}
          >
            <colgroup>
              <col className="of-what" />
              <col className="of-cost" />
              <col />
            </colgroup>
            <thead className="for-ears">
              <tr>
                <th scope="col">combination</th>
                <th scope="col">price</th>
                <th scope="col">why not</th>
              </tr>
            </thead>
            <tbody>
              {page.rows.map(({ key, what, cost, why }, i) => (
                <tr key={key} aria-rowindex={page.from + i + 2} style={{ height: rowHeight }}>
                  <th scope="row" title={what}>
                    <span>{what}</span>
                  </th>
                  <td className="is-number">{cost}</td>
                  <td title={why}>
                    <span>{why === '' ? <b>On the front.</b> : why}</span>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </section>
    </>
  );
}
