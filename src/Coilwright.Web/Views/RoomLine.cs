using System.Globalization;
using Coilwright.Workshop;

namespace Coilwright.Web.Views;

/// <summary>The room's temperature as it stands in the line of the place where coils are wound.</summary>
/// <param name="records">The shop's records.</param>
/// <param name="time">The clock.</param>
public sealed class RoomLine(IShopRecords records, TimeProvider time)
{
    /// <summary>Temperature and age, or that none holds.</summary>
    public async Task<string> WordsAsync(CancellationToken cancel)
    {
        DateTimeOffset nowUtc = time.GetUtcNow();
        return await RoomInForce.AtAsync(records, nowUtc, cancel).ConfigureAwait(false) is { } room
            ? string.Create(CultureInfo.InvariantCulture, $"Room {room.TemperatureC:0.#} °C, {AgeOf(nowUtc - room.TimeUtc)}")
            : "Room temperature: none in force";
    }

    private static string AgeOf(TimeSpan age) =>
        age < TimeSpan.FromMinutes(1) ? "just now" : string.Create(CultureInfo.InvariantCulture, $"{age.TotalMinutes:0} min ago");
}
