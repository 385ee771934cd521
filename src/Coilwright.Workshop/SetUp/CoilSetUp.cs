using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.SetUp;

/// <summary>What the meter should show at one temperature. Ω.</summary>
/// <param name="TemperatureC">Temperature of the coil, °C.</param>
/// <param name="Expected">The forecast.</param>
/// <param name="LowOhm">Lowest that passes; null when the recipe sets no limit.</param>
/// <param name="HighOhm">Highest that passes; null when the recipe sets no limit.</param>
public sealed record ExpectedResistance(double TemperatureC, Estimate Expected, double? LowOhm, double? HighOhm);

/// <summary>How a coil is set up on a winder. SI units.</summary>
public sealed record CoilSetUp
{
    public required string Name { get; init; }

    /// <summary>Gauge and enamel, as the shop calls them.</summary>
    public required string Wire { get; init; }
    public required Estimate BareDiameterM { get; init; }
    public required Estimate OverallDiameterM { get; init; }
    public required Figure WireLength { get; init; }
    public required Figure WireMass { get; init; }
    public required TensionAdvice Tension { get; init; }

    /// <summary>Traverse travel per turn, m.</summary>
    public required double PitchM { get; init; }

    /// <summary>True when the recipe states the pitch, false when it follows from the lay.</summary>
    public required bool PitchStated { get; init; }
    public required Figure TurnsPerLayer { get; init; }
    public required Figure Layers { get; init; }

    /// <summary>Real turns wanted.</summary>
    public required double Turns { get; init; }
    public required double? SpeedRpm { get; init; }
    public required WindingDirection Direction { get; init; }
    public required ExpectedResistance At20C { get; init; }
    public required ExpectedResistance AtRoom { get; init; }
    public required FillVerdict Fill { get; init; }
    public required Figure Inductance { get; init; }

    /// <summary>Where the traverse starts. Common practice, no source; a recipe's notes may say otherwise.</summary>
    public string StartSide { get; init; } = "bottom flange, start lead through the bottom";

    /// <summary>What the counter shows at the last turn, given the real turns per count.</summary>
    public double CounterStop(double correction) => Math.Round(Turns / correction, MidpointRounding.AwayFromZero);

    /// <summary>Time at full speed, s; null when the recipe states no speed.</summary>
    public double? RunTimeS =>
        (OnMachine, SpeedRpm) switch
        {
            ({ } machine, _) => machine.RunTimeS(Turns),
            (_, { } speed and > 0) => Turns / speed * 60,
            _ => null,
        };

    /// <summary>The way the wire runs round the bobbin in words, with where to look from.</summary>
    public string DirectionWords =>
        Direction == WindingDirection.Clockwise
            ? "clockwise from start to finish, seen from the top"
            : "counter-clockwise from start to finish, seen from the top";

    /// <summary>
    /// What the spindle does: the wire stays at the guide while the bobbin turns, so the spindle turns against the winding.
    /// </summary>
    public string SpindleWords =>
        OnMachine?.SpindleWords
        ?? (
            Direction == WindingDirection.Clockwise
                ? "counter-clockwise if the top faces you; clockwise if the bottom does"
                : "clockwise if the top faces you; counter-clockwise if the bottom does"
        );

    /// <summary>Length of the last turn, m.</summary>
    public required double OutermostTurnM { get; init; }

    /// <summary>What the winder at hand is set to; null when no machine was named.</summary>
    public CoilOnMachine? OnMachine { get; init; }

    internal static CoilSetUp For(CoilModel coil, CoilForecast forecast, Band? limits, double roomC, Machine? machine)
    {
        Estimate ohm = forecast.DcResistance.Estimate;
        double? lowOhm = limits?.Low,
            highOhm = limits?.High;
        double warm = CopperWire.TemperatureFactor(roomC);
        CoilSetUp setUp = new()
        {
            Name = coil.Name,
            Wire = $"{coil.Wire.Gauge} {KeyLabels.Of(coil.Wire.Insulation)}".Trim(),
            BareDiameterM = coil.Wire.BareDiameterM,
            OverallDiameterM = coil.Wire.OverallDiameterM,
            WireLength = forecast.WireLength,
            WireMass = forecast.WireMass,
            Tension = TensionAdvice.For(coil.Wire, coil.Winding.TensionN ?? machine?.OwnTensionFor(coil.Wire.Gauge)),
            PitchM = coil.Winding.PitchM ?? coil.Bobbin.WindingHeightM / forecast.TurnsPerLayer.Value,
            PitchStated = coil.Winding.PitchM is not null,
            TurnsPerLayer = forecast.TurnsPerLayer,
            Layers = forecast.Layers,
            Turns = coil.Winding.Turns,
            SpeedRpm = coil.Winding.SpeedRpm,
            Direction = coil.Winding.Direction,
            At20C = new ExpectedResistance(20, ohm, lowOhm, highOhm),
            AtRoom = new ExpectedResistance(
                roomC,
                new Estimate(ohm.Value * warm, ohm.Low * warm, ohm.High * warm, ohm.Basis),
                lowOhm * warm,
                highOhm * warm
            ),
            Fill = FillVerdict.For(forecast, coil.Bobbin),
            Inductance = forecast.Inductance,
            OutermostTurnM = coil.Bobbin.TurnLengthM(forecast.Build.Value),
        };
        return machine is null ? setUp : setUp with { OnMachine = CoilOnMachine.For(machine, coil, setUp) };
    }
}
