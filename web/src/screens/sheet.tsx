/** The sheet of a place: drawn, answered, and asked about. A screen composes; it does not compute. */
import { useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { WaterPanel } from '../need/water-panel.tsx';
import type { PointPlace } from '../profile/line-points.ts';
import { AnswerPanel, SpokenAnswer } from './answer-panel.tsx';
import { AnswerStrip } from './answer-strip.tsx';
import { ChangesPanel } from './changes-panel.tsx';
import { DrawingPlate } from './drawing-plate.tsx';
import { Notes } from './notes.tsx';
import { Thread } from './thread.tsx';

export function Sheet() {
  const { place } = useNotebook();
  const [asked, setAsked] = useState<PointPlace>();
  const order = useStore(place, (state) => state.order);
  const answers = (
    <div className="answer-and-changes" key="answers">
      <AnswerPanel />
      <ChangesPanel />
    </div>
  );
  const questions = <Thread key="questions" asked={asked} />;
  return (
    <>
      <DrawingPlate showPoint={(point) => setAsked({ ...point })} />
      {order === 'fieldsFirst' ? [questions, answers] : [answers, questions]}
      <WaterPanel />
      <Notes />
      <SpokenAnswer />
      <AnswerStrip />
    </>
  );
}
