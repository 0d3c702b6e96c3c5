/** The air while it is being typed. */
export interface AirEntry {
  tempC: number | null;
  humidityPct: number | null;
  notUsed: boolean;
}
