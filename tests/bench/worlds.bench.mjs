/** How the crisp window's promises hold in kitchens that are not its own: the stored worlds of `tests/worlds`. */
import { withModule } from "../worlds/load.mjs";

export async function rows() {
  const measured = await withModule("hold-worlds.ts", ({ worldRows }) => worldRows());
  return measured.map((row) => ({ ...row, peer: null, peerValue: null, ratio: null }));
}
