using System.Globalization;
using Coilwright.Physics;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;

namespace Coilwright.Workshop.SetUp;

/// <summary>What one winder is set to for one coil. SI units.</summary>
public sealed record CoilOnMachine
{
    /// <summary>Nearest pitch that the machine can run, and how.</summary>
    public required PitchSetting Pitch { get; init; }

    /// <summary>Turns in one pass at that pitch.</summary>
    public required double TurnsPerLayer { get; init; }

    /// <summary>Passes at that pitch.</summary>
    public required double Layers { get; init; }

    /// <summary>Spindle speed to set, turns per minute; null when neither recipe nor machine states one.</summary>
    public required double? SpeedRpm { get; init; }

    /// <summary>What to know about the speed; empty as a rule.</summary>
    public required string SpeedWords { get; init; }

    /// <summary>95 % doubt of the turns that the counter's correction leaves; 0 without a marked test.</summary>
    public required double StopDoubtTurns { get; init; }

    /// <summary>Way the spindle turns, and where to look from.</summary>
    public required string SpindleWords { get; init; }

    /// <summary>Coils wound at once.</summary>
    public required int Spindles { get; init; }

    /// <summary>What the brake's range means for this wire; empty when all of the band can be set.</summary>
    public required string BrakeWords { get; init; }

    /// <summary>Null for a machine with a counter.</summary>
    public TimedForecast? Timed { get; init; }

    /// <summary>Time of one run at that speed, s; all spindles together.</summary>
    public double? RunTimeS(double turns) => SpeedRpm is { } speed and > 0 ? turns / speed * 60 : null;

    internal static CoilOnMachine For(Machine machine, CoilModel model, CoilSetUp coil)
    {
        double? speedRpm = coil.SpeedRpm is { } wanted ? machine.Speed?.Nearest(wanted) ?? wanted : machine.Speed?.HighRpm;
        PitchSetting pitch = PitchSetting.For(machine, coil.PitchM, model.Bobbin.WindingHeightM, speedRpm);
        double turnsPerLayer = Math.Max(1, model.Bobbin.WindingHeightM / pitch.PitchM);
        if (model.Winding.Lay == Lay.Even && pitch.PitchM < model.Wire.OverallDiameterM.Value)
        {
            string tight = "finer than the wire is thick: an even lay climbs over itself";
            pitch = pitch with { Note = pitch.Note.Length > 0 ? $"{pitch.Note}; {tight}" : tight };
        }

        return new CoilOnMachine
        {
            Pitch = pitch,
            TurnsPerLayer = turnsPerLayer,
            Layers = coil.Turns / turnsPerLayer,
            SpeedRpm = speedRpm,
            SpeedWords = SpeedOf(machine, coil.SpeedRpm, speedRpm),
            StopDoubtTurns = machine.Counter is { } test ? coil.Turns * test.DoubtTurns / test.Turns : 0,
            SpindleWords = Spindle(machine.FacesYou, coil.Direction),
            Spindles = machine.Spindles,
            BrakeWords = Brake(machine, coil.Tension),
            Timed = machine.Timed is { } timed && speedRpm is { } rpm ? TimedForecast.For(timed, coil, rpm) : null,
        };
    }

    /// <summary>The wire stays where the guide is while the bobbin turns: it runs round the bobbin against the spindle.</summary>
    private static string Spindle(MountedSide facesYou, WindingDirection direction)
    {
        bool clockwiseFromTop = direction == WindingDirection.CounterClockwise;
        bool clockwiseToYou = facesYou == MountedSide.Top ? clockwiseFromTop : !clockwiseFromTop;
        return $"{(clockwiseToYou ? "clockwise" : "counter-clockwise")}, seen from the free end, where the bobbin's "
            + $"{(facesYou == MountedSide.Top ? "top" : "bottom")} faces you";
    }

    private static string SpeedOf(Machine machine, double? wantedRpm, double? setRpm)
    {
        if (wantedRpm is not { } wanted)
        {
            return setRpm is null ? "neither the recipe nor the machine states a speed" : "the recipe states none: the machine's highest";
        }

        return setRpm is { } set && Math.Abs(set - wanted) > 0.5
            ? string.Create(CultureInfo.InvariantCulture, $"the recipe says {wanted:#,##0} rpm; this machine's nearest is {set:#,##0} rpm")
            : "";
    }

    private static string Brake(Machine machine, TensionAdvice tension)
    {
        if (machine.TensionN is not { } brake)
        {
            return "";
        }

        string range = $"{Gf(brake.LowN)} – {Gf(brake.HighN)}";
        if (brake.LowN > tension.HighN)
        {
            return $"this machine's brake ({range}) pulls more than the band allows: use another machine";
        }

        if (brake.HighN < tension.LowN)
        {
            return $"this machine's brake ({range}) does not reach the band: expect a loose coil";
        }

        bool ownIsOutside = tension.OwnN is { } own && (own < brake.LowN || own > brake.HighN);
        return ownIsOutside ? $"yours is outside this machine's brake, {range}" : "";
    }

    private static string Gf(double forceN) => QuantityParser.FormatIn(forceN, QuantityKind.Force, "gf");
}

/// <summary>A coil wound by the clock: how long, and what spread of turns that leaves. SI units.</summary>
/// <param name="Seconds">How long to run, s.</param>
/// <param name="Turns">Turns with the 95 % interval that speed and stopping leave.</param>
/// <param name="DcResistanceAt20C">Resistance at 20 °C with the same doubt added to the forecast's, Ω.</param>
/// <param name="InductanceLow">Lowest inductance over the nominal, from the turns alone.</param>
/// <param name="InductanceHigh">Highest inductance over the nominal, from the turns alone.</param>
/// <param name="SpreadStated">False when the spread is our assumption.</param>
public sealed record TimedForecast(
    double Seconds,
    Estimate Turns,
    Estimate DcResistanceAt20C,
    double InductanceLow,
    double InductanceHigh,
    bool SpreadStated
)
{
    internal static TimedForecast For(TimedRun timed, CoilSetUp coil, double speedRpm)
    {
        double seconds = coil.Turns / speedRpm * 60,
            spread = Math.Min(0.95, timed.TurnsSpread(seconds));
        Estimate ohm = coil.At20C.Expected;

        // The last turns lie outside the mean one: a turn more adds more than its share of the wire.
        double outermost = coil.OutermostTurnM / (coil.WireLength.Value / coil.Turns);
        double low = ohm.Value - Math.Sqrt(Square(ohm.Value - ohm.Low) + Square(ohm.Value * spread * outermost));
        double high = ohm.Value + Math.Sqrt(Square(ohm.High - ohm.Value) + Square(ohm.Value * spread * outermost));
        return new TimedForecast(
            seconds,
            new Estimate(
                coil.Turns,
                coil.Turns * (1 - spread),
                coil.Turns * (1 + spread),
                timed.SpeedSpreadStated ? Basis.Measured : Basis.Assumed
            ),
            new Estimate(ohm.Value, Math.Max(0, low), high, ohm.Basis),
            Square(1 - spread),
            Square(1 + spread),
            timed.SpeedSpreadStated
        );
    }

    private static double Square(double value) => value * value;
}
