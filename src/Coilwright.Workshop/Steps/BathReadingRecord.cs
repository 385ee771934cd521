namespace Coilwright.Workshop.Steps;

/// <summary>The bath's temperature as it was read while a basket was in it. Never edited.</summary>
/// <param name="Id">Client-made id.</param>
/// <param name="BasketId">The basket.</param>
/// <param name="Typed">Exactly what was typed.</param>
/// <param name="TemperatureC">The bath, °C.</param>
/// <param name="Person">Who read it.</param>
/// <param name="TimeUtc">When.</param>
public sealed record BathReadingRecord(Guid Id, Guid BasketId, string Typed, double TemperatureC, string Person, DateTimeOffset TimeUtc);
