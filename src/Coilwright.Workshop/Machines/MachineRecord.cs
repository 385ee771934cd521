namespace Coilwright.Workshop.Machines;

/// <summary>A winder as it was entered. Never edited: a change is a new record of the same name, and the newest holds.</summary>
/// <param name="Id">Client-made id.</param>
/// <param name="Name">As the shop calls it.</param>
/// <param name="Json">The machine, in the format coilwright.machine/1.</param>
/// <param name="Person">Who entered it.</param>
/// <param name="TimeUtc">When.</param>
public sealed record MachineRecord(Guid Id, string Name, string Json, string Person, DateTimeOffset TimeUtc);
