/** One numbered step of the schema. `version` is the `user_version` after it. */
export interface Migration {
  readonly version: number;
  readonly name: string;
  readonly sql: string;
}
