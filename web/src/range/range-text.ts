/** The range as YAML: the reader of YAML is fetched when a file is there to be read or made. */
export { readRange, writeRange } from '@fallwright/records';
