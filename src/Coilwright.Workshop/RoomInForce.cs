namespace Coilwright.Workshop;

/// <summary>The one rule of how long a room's temperature holds: two hours, common practice, no source.</summary>
public static class RoomInForce
{
    /// <summary>
    /// How long a temperature holds after it was entered; as long before it, for what is told late or on a clock that was set back.
    /// </summary>
    public static readonly TimeSpan Holds = TimeSpan.FromHours(2);

    /// <summary>The temperature when it holds at a moment; null when it does not, or none was entered.</summary>
    public static RoomTemperature? At(RoomTemperature? latest, DateTimeOffset atUtc) =>
        latest is not null && (atUtc - latest.TimeUtc).Duration() <= Holds ? latest : null;

    /// <summary>The room's temperature that holds at a moment; null when none does.</summary>
    public static async Task<RoomTemperature?> AtAsync(IShopRecords records, DateTimeOffset atUtc, CancellationToken cancel) =>
        At(await records.Room.LatestAsync(cancel).ConfigureAwait(false), atUtc);
}
