/** The questions, in the order in which water meets the parts: source, drive line, ram, delivery line, tank. */
import { useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { HeightField, HeightMeasuring } from '../fields/height-field.tsx';
import { LinePipes } from '../fields/line-pipes.tsx';
import { NeedFields } from '../need/need-fields.tsx';
import { hasWaitingText, NeedPanel } from '../need/need-panel.tsx';
import type { PointPlace } from '../profile/line-points.ts';
import { ProfileTable } from '../profile/profile-table.tsx';
import { RamFields } from './ram-fields.tsx';
import { SourceFields } from './source-fields.tsx';

export function Thread({
  asked,
}: {
  /** A point of the drawing whose boxes are asked for. */
  readonly asked: PointPlace | undefined;
}) {
  const { place } = useNotebook();
  const [need, setNeed] = useState<'shut' | 'waiting' | 'asked'>(() =>
    hasWaitingText(place.get()) ? 'waiting' : 'shut',
  );
  return (
    <>
      <div className="thread">
        <ThreadPart id="source" title="Source">
          <SourceFields />
        </ThreadPart>
        <ThreadPart id="drive" title="Drive line">
          <HeightField
            height="fall"
            label="Fall"
            whenEmpty="from the water to the ram’s waste valve"
          />
          <LinePipes line="drive" called="the drive line" add="Add another pipe below it" />
          <HeightMeasuring height="fall" />
          <ProfileTable line="drive" asked={asked} />
        </ThreadPart>
        <ThreadPart id="ram" title="Ram" isRam>
          <RamFields />
        </ThreadPart>
        <ThreadPart id="delivery" title="Delivery line">
          <HeightField
            height="lift"
            label="Lift"
            example={{ metric: '12 m', us: '40 ft' }}
            whenEmpty="from the ram’s waste valve to the tank"
          />
          <LinePipes line="delivery" called="the delivery line" add="Add another pipe below it" />
          <HeightMeasuring height="lift" />
          <ProfileTable line="delivery" asked={asked} />
        </ThreadPart>
        <ThreadPart id="tank" title="Tank">
          <NeedFields
            isOpen={need !== 'shut'}
            toggle={() => setNeed(need === 'shut' ? 'asked' : 'shut')}
          />
        </ThreadPart>
      </div>
      {need !== 'shut' && (
        <NeedPanel
          isAsked={need === 'asked'}
          close={() => {
            setNeed('shut');
            window.document.querySelector<HTMLElement>('.need-opener')?.focus();
          }}
        />
      )}
    </>
  );
}

function ThreadPart({
  id,
  title,
  isRam = false,
  children,
}: {
  readonly id: string;
  readonly title: string;
  readonly isRam?: boolean;
  readonly children: React.ReactNode;
}) {
  return (
    <section
      id={id}
      className={isRam ? 'is-ram' : undefined}
      aria-labelledby={`${id}-title`}
      tabIndex={-1}
    >
      <h2 id={`${id}-title`}>{title}</h2>
      <div className="fields">{children}</div>
    </section>
  );
}
