using Coilwright.Storage.Model;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces.Events;

namespace Coilwright.Storage.Tests;

/// <summary>An event as the file keeps it.</summary>
public sealed class PieceEventRowTests
{
    private static readonly Guid s_other = Guid.NewGuid();

    [Fact]
    public void What_is_looked_for_stands_in_columns_and_nothing_stands_twice()
    {
        PieceEventRow row = PieceEventRow.Of(
            new StepBegun
            {
                Id = Guid.NewGuid(),
                PieceId = Guid.NewGuid(),
                Step = "potting",
                BasketId = s_other,
                Person = "Ines",
                TimeUtc = TempShop.Noon,
            }
        );
        Assert.Equal(("StepBegun", s_other, null, "Ines"), (row.Kind, row.BasketId, row.MixId, row.Person));
        Assert.Equal("""{"step":"potting"}""", row.Payload);
        Assert.Equal(s_other, PieceEventRow.Of(Joined()).About);
        Assert.DoesNotContain(s_other.ToString(), PieceEventRow.Of(Joined()).Payload, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void An_event_comes_back_as_it_was_said()
    {
        JoinedSet joined = Joined();
        Assert.Equal(joined, PieceEventRow.Of(joined).ToEvent());
        MagnetsCharged charged = new()
        {
            Id = Guid.NewGuid(),
            PieceId = s_other,
            Charge = new ChargeAsSaid(new MagnetLevel(null, 0.1 + 0.2, 0.001), "3,000 G — \"hot\"", "coil é"),
            TimeUtc = TempShop.Noon.AddTicks(1),
        };
        Assert.Equal(charged, PieceEventRow.Of(charged).ToEvent());
        Assert.Equal("Charged", charged.Kind); // the name that files and formats have had from the first day
    }

    private static JoinedSet Joined() =>
        new()
        {
            Id = Guid.NewGuid(),
            PieceId = Guid.NewGuid(),
            SetId = s_other,
            Name = "Lantern\n3", // no line is a border
            Place = "neck",
            OffsetDb = 0.1 + 0.2,
            OffsetTyped = "0,3 dB",
            Why = "a; b\nc",
            TimeUtc = TempShop.Noon,
        };
}
