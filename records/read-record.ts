/** A record of ours from a YAML text: the record, or every problem with it by its line. */
import { type RecordKind, type RecordRead, readFrom } from './record-from-data.ts';
import { readYaml } from './yaml-text.ts';

/** Reads YAML or JSON text. Never throws on what a person wrote. */
export function readRecord<Value>(source: string, kind: RecordKind<Value>): RecordRead<Value> {
  const yaml = readYaml(source, kind);
  if (!yaml.ok) return yaml;
  return readFrom(yaml.text.data, yaml.problems, yaml.text, kind);
}
