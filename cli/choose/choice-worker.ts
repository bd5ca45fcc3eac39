/** One worker of a choice: does the tasks it is sent, one by one, and sends back what came of each. */
import { parentPort, workerData } from 'node:worker_threads';
import {
  type ChoiceTask,
  type Installation,
  judgeBySamples,
  type PlaceToFit,
  performTask,
  type Ram,
} from '@fallwright/engine';
import { type RamForm, type Site, unsureOfBuild } from '@fallwright/records';

/** All that a worker has to know before its first task. */
export interface WorkerSetUp {
  readonly place: PlaceToFit;
  readonly site: Site;
  /** What is told of each ram in each of its tunings. */
  readonly rams: readonly { readonly ram: Ram; readonly form: RamForm }[];
  readonly samples: number;
  readonly seed: number;
}

const { place, site, rams, samples, seed } = workerData as WorkerSetUp;

/** A vessel may have been changed; name and waste valve tell rams and tunings apart. */
function nameOf({ name, wasteValve }: Ram): string {
  return JSON.stringify([name, wasteValve]);
}
const forms = new Map(rams.map(({ ram, form }) => [nameOf(ram), form]));

function judge(installation: Installation, needed?: number) {
  const inputs = unsureOfBuild(site, installation, forms.get(nameOf(installation.ram)));
  return judgeBySamples(inputs, { samples, seed })(installation, needed);
}

parentPort?.on('message', (task: ChoiceTask) => {
  parentPort?.postMessage(performTask(place, task, judge));
});
