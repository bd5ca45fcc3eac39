/** One place: drawn, answered, and asked about. A screen composes; it does not compute. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Hatches } from '../drawing/hatches.tsx';
import { AnswerPanel, SpokenAnswer } from './answer-panel.tsx';
import { AnswerStrip } from './answer-strip.tsx';
import { ChangesPanel } from './changes-panel.tsx';
import { DrawingPlate } from './drawing-plate.tsx';
import { NotebookHead } from './notebook-head.tsx';
import { Notes } from './notes.tsx';
import { ExampleSlip, PlaceTitle } from './place-title.tsx';
import { Thread } from './thread.tsx';

export function FirstPage() {
  const { place } = useNotebook();
  const order = useStore(place, (state) => state.order);
  const answers = (
    <div className="answer-and-changes" key="answers">
      <AnswerPanel />
      <ChangesPanel />
    </div>
  );
  const questions = <Thread key="questions" />;
  return (
    <>
      <Hatches />
      <NotebookHead />
      <main className="page">
        <PlaceTitle />
        <ExampleSlip />
        <DrawingPlate />
        {order === 'fieldsFirst' ? [questions, answers] : [answers, questions]}
        <Notes />
      </main>
      <footer className="notebook-foot">
        A prediction, not a promise. Local codes and licensed practice come first. The example is
        invented.
      </footer>
      <SpokenAnswer />
      <AnswerStrip />
    </>
  );
}
