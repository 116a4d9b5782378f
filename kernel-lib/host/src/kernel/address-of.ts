/** The address of one of a kernel's sockets, written as Jupyter programs write it. */
export function addressOf(
  connection: { readonly transport: string; readonly ip: string },
  port: number,
): `${string}://${string}` {
  const { transport, ip } = connection;
  return `${transport}://${ip}${transport === "ipc" ? "-" : ":"}${port}`;
}
