namespace Coilwright.Workshop;

/// <summary>Room temperature as somebody entered it.</summary>
public sealed record RoomTemperature(double TemperatureC, string Typed, string Person, DateTimeOffset TimeUtc);

/// <summary>What a store must do for the temperature of the winding room.</summary>
public interface IRoomRecords
{
    /// <summary>The one entered last; null before the first.</summary>
    Task<RoomTemperature?> LatestAsync(CancellationToken cancel);

    /// <summary>Adds one; it holds until the next.</summary>
    Task AddAsync(RoomTemperature entry, CancellationToken cancel);
}
