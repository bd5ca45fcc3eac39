/** A test as YAML: the reader of YAML is fetched when a file is there to be read or made. */
export { LONGEST_TEST, readTest, writeTest } from '@fallwright/records';
