using System.Globalization;
using Coilwright.Papers.Formatting;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.SetUp;

/// <summary>The steps of setting up a coil, in the order of the work.</summary>
internal static class SetUpSteps
{
    /// <summary>What a person sets or does by hand, of all that the sheet says.</summary>
    private static readonly string[] s_set =
    [
        "Wire runs",
        "Spindle",
        "Start",
        "Wire",
        "Spool",
        "Tension",
        "Machine",
        "Pitch",
        "Recipe's pitch",
        "Set pitch",
        "How",
        "Speed",
        "Write down",
        "Iron to a pole",
    ];

    public static IReadOnlyList<SetUpStep> Of(WindingSetUp setUp, CoilSetUp coil)
    {
        SetUpStep[] steps = [Mount(coil), Thread(setUp, coil), Machine(setUp, coil), Wind(coil), Check(setUp, coil)];
        return setUp.OnlyWhatIsSet ? [.. steps.Select(OnlySet)] : steps;
    }

    private static SetUpStep OnlySet(SetUpStep step) =>
        step with
        {
            Pairs = [.. step.Pairs.Where(pair => s_set.Contains(pair.Term))],
            Terms = [.. step.Terms.Where(term => s_set.Contains(term.Term))],
        };

    /// <summary>What to choose from when the wire breaks, at three quarters of the turns for example.</summary>
    public static (string Heading, IReadOnlyList<string> Choices) Break(CoilSetUp coil)
    {
        double at = Math.Round(coil.Turns * 0.75 / 100) * 100;
        return ($": stop, write down the counter, choose. At {Count(at)}, for example:", [.. BreakAdvice.Choices(coil, at)]);
    }

    private static SetUpStep Mount(CoilSetUp coil) =>
        new(
            "Mount the bobbin",
            [],
            [("Wire runs", coil.DirectionWords), ("Spindle", coil.SpindleWords), ("Start", coil.StartSide)],
            string.Join(' ', Cautions.For(Job.RunningWinder))
        );

    private static SetUpStep Thread(WindingSetUp setUp, CoilSetUp coil)
    {
        (string, string)[] spool = setUp.Batch is { } batch ? [("Spool", batch.SpoolWords)] : [];
        return new SetUpStep(
            "Thread the wire",
            [],
            [
                ("Wire", coil.Wire),
                .. spool,
                ("Bare / overall", $"{Mm(coil.BareDiameterM.Value)} / {Mm(coil.OverallDiameterM.Value)}"),
                ("A coil takes", $"{FigureFormatter.WithInterval(coil.WireLength)}, {FigureFormatter.WithInterval(coil.WireMass)}"),
                ("Tension", Tension(coil.Tension)),
            ],
            Cautions.FineWire
        );
    }

    private static string Tension(TensionAdvice tension)
    {
        string first = tension.OwnN is { } own ? $"yours {Gf(own)}, {tension.Words}; band " : $"{tension.Words}; band ";
        return first + $"{Gf(tension.LowN)} – {Gf(tension.HighN)}, never above {Gf(tension.MaximumN)} ({TensionAdvice.Source})";
    }

    private static SetUpStep Machine(WindingSetUp setUp, CoilSetUp coil)
    {
        (string, string)[] machine = setUp.Machine.Length > 0 ? [("Machine", setUp.Machine)] : [];
        string pitch = Mm(coil.PitchM) + (coil.PitchStated ? "" : ", from the lay");
        if (coil.OnMachine is not { } on)
        {
            return new SetUpStep(
                "Set the machine",
                [
                    .. machine,
                    ("Pitch", pitch),
                    ("Turns per layer", FigureFormatter.Value(coil.TurnsPerLayer)),
                    ("Layers", FigureFormatter.Value(coil.Layers)),
                ],
                []
            );
        }

        string[] notes = [.. ((string[])[on.Pitch.Note, on.SpeedWords, on.BrakeWords]).Where(note => note.Length > 0)];
        return new SetUpStep(
            "Set the machine",
            [
                .. machine,
                ("Recipe's pitch", pitch),
                ("Set pitch", Mm(on.Pitch.PitchM)),
                ("Turns per layer", on.TurnsPerLayer.ToString("0.#", CultureInfo.InvariantCulture)),
                ("Layers", on.Layers.ToString("0.#", CultureInfo.InvariantCulture)),
            ],
            [("How", on.Pitch.How), .. notes.Select(note => ("Note", note))]
        );
    }

    private static SetUpStep Wind(CoilSetUp coil)
    {
        double? speedRpm = coil.OnMachine is { } on ? on.SpeedRpm : coil.SpeedRpm;
        string together = coil.OnMachine is { Spindles: > 1 and var count } ? $" for {count} coils" : "",
            time = coil.RunTimeS is { } seconds ? string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0.0} min{together}") : "–";
        return new SetUpStep(
            "Wind",
            [
                ("Speed", speedRpm is { } speed ? Count(speed) + " rpm" : "not stated in the recipe"),
                ("Time", time),
                ("Build", FigureFormatter.WithInterval(coil.Fill.Build)),
                ("Fill", coil.Fill.Fill is { } fill ? FigureFormatter.WithInterval(fill) : "–"),
            ],
            [("Room", coil.Fill.Words)]
        );
    }

    private static SetUpStep Check(WindingSetUp setUp, CoilSetUp coil)
    {
        ExpectedResistance cold = coil.At20C;
        string limits = cold is { LowOhm: { } low, HighOhm: { } high } ? $", {Ohm(low)} – {Ohm(high)} passes" : "",
            first = $"{FigureFormatter.WithInterval(coil.Inductance)} at 1 kHz, build {FigureFormatter.WithInterval(coil.Fill.Build)}";
        (string, string)[] swing = setUp.Phase?.Coils.FirstOrDefault(one => one.Name == coil.Name) is { FirstSwing: not 0 } signs
            ? [("Iron to a pole", $"first swing {signs.FirstSwingWords} (finish hot)")]
            : [];
        return new SetUpStep(
            "Bare the ends, cool, measure",
            [],
            [
                ("At 20 °C", Ohm(cold.Expected.Value) + limits),
                ("First piece", first + "; then release the series"),
                ("Write down", "ohms and the coil's temperature; 10 °C is 4 %"),
                .. swing,
            ],
            string.Join(' ', Cautions.For(Job.ReadingCoil))
        );
    }

    internal static string Ohm(double ohm) => QuantityParser.Format(ohm, QuantityKind.Resistance);

    internal static string Count(double count) => count.ToString("#,##0", CultureInfo.InvariantCulture);

    private static string Mm(double lengthM) => QuantityParser.FormatIn(lengthM, QuantityKind.Length, "mm");

    private static string Gf(double forceN) => QuantityParser.FormatIn(forceN, QuantityKind.Force, "gf");
}
