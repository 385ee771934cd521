using System.Globalization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.SetUp;
using static Coilwright.Papers.SetUp.SetUpSteps;

namespace Coilwright.Papers.SetUp;

/// <summary>What the set-up sheet of a coil says first: where to stop, and what the meter should read.</summary>
internal static class SetUpHead
{
    /// <summary>Where to stop: what it is called, the figure, and what it rests on.</summary>
    public static (string Label, string Value, string Note) Stop(WindingSetUp setUp, CoilSetUp coil)
    {
        if (setUp.HasCounter)
        {
            return (
                setUp.IsForNoWinder ? "Real turns" : "Counter stop",
                Count(coil.CounterStop(setUp.CounterCorrection)),
                StopNote(setUp, coil)
            );
        }

        return coil.OnMachine?.Timed is { } timed
            ? ("Stop after", string.Create(CultureInfo.InvariantCulture, $"{timed.Seconds:0} s"), ClockNote(setUp, coil, timed))
            : ("Stop after", "–", "no counter, and neither recipe nor machine states a speed");
    }

    private static string ClockNote(WindingSetUp setUp, CoilSetUp coil, TimedForecast timed) =>
        setUp.OnlyWhatIsSet ? "by the clock" : Clock(coil, timed);

    private static string StopNote(WindingSetUp setUp, CoilSetUp coil)
    {
        if (setUp.OnlyWhatIsSet)
        {
            return "the counter's correction is in it";
        }

        return setUp.IsForNoWinder ? "no counter's correction is in it" : Correction(setUp, coil);
    }

    /// <summary>What the meter should read in the room: what it is called, the figure, and its limits.</summary>
    public static (string Label, string Value, string Note) Meter(WindingSetUp setUp, CoilSetUp coil)
    {
        ExpectedResistance room = coil.AtRoom;
        string limits = room is { LowOhm: { } low, HighOhm: { } high }
            ? $"passes from {Ohm(low)} to {Ohm(high)}"
            : $"no limit in the recipe; 95 % of coils expected from {Ohm(room.Expected.Low)} to {Ohm(room.Expected.High)}";
        return (
            "Meter at " + QuantityParser.Format(room.TemperatureC, QuantityKind.Temperature),
            Ohm(room.Expected.Value),
            limits + (setUp.Batch is { } batch ? Measured(batch) : "")
        );
    }

    /// <summary>What the code says: the batch, which it opens; else recipe, revision and coil, shortened to what can be printed.</summary>
    public static string Code(WindingSetUp setUp, CoilSetUp coil) =>
        setUp.Batch?.Name
        ?? string.Join('/', new[] { setUp.RecipeName, setUp.Heading.Revision, coil.Name }.Where(part => part.Length > 0))
            .ToUpperInvariant();

    private static string Correction(WindingSetUp setUp, CoilSetUp coil)
    {
        string doubt = coil.OnMachine is { StopDoubtTurns: > 0 } on
                ? string.Create(CultureInfo.InvariantCulture, $", ± {on.StopDoubtTurns:0.#} turns")
                : "",
            factor = setUp.CounterCorrection.ToString("0.000", CultureInfo.InvariantCulture);
        return $"for {Count(coil.Turns)} real turns, correction × {factor} {setUp.CorrectionBasis}{doubt}";
    }

    private static string Clock(CoilSetUp coil, TimedForecast timed)
    {
        string turns = string.Create(
                CultureInfo.InvariantCulture,
                $"for {coil.Turns:#,##0} turns; by the clock {timed.Turns.Low:#,##0} to {timed.Turns.High:#,##0}"
            ),
            spread = timed.SpreadStated ? "" : " (spread assumed: measure yours)";
        return $"{turns}, {Ohm(timed.DcResistanceAt20C.Low)} – {Ohm(timed.DcResistanceAt20C.High)} at 20 °C{spread}";
    }

    private static string Measured(BatchHeading batch) =>
        (batch.RoomKnown ? "; the room as entered" : "; no room temperature is in force")
        + (batch.SpoolWire.Length > 0 ? $", wire of spool {batch.Spool}" : "");
}
