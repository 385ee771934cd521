namespace Coilwright.Workshop.Tests.Winding;

/// <summary>A room's temperature holds two hours, and one rule says so everywhere.</summary>
public sealed class RoomInForceTests
{
    private static readonly RoomTemperature s_room = new(23.5, "23.5 °C", "Mara", new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero));

    [Theory]
    [InlineData(0, true)]
    [InlineData(119, true)]
    [InlineData(120, true)]
    [InlineData(121, false)]
    [InlineData(-120, true)] // an entry told late, made before the room was read
    [InlineData(-121, false)] // a clock set back by more than that
    public void A_room_holds_two_hours(int minutes, bool holds) =>
        Assert.Equal(holds ? s_room : null, RoomInForce.At(s_room, s_room.TimeUtc.AddMinutes(minutes)));

    [Fact]
    public void No_room_entered_is_none_in_force() => Assert.Null(RoomInForce.At(null, s_room.TimeUtc));
}
