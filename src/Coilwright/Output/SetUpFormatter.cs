using System.Globalization;
using Coilwright.Papers.Formatting;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Output;

/// <summary>A set-up for people at a terminal.</summary>
public static class SetUpFormatter
{
    public static void Write(TextWriter writer, WindingSetUp setUp)
    {
        writer.WriteLine($"Set-up: {setUp.RecipeName}" + (setUp.Machine.Length > 0 ? $" on {setUp.Machine}" : ""));
        if (setUp.Batch is { } batch)
        {
            writer.WriteLine($"  Batch {batch.Name}: {batch.CoilsWords}; spool {batch.SpoolWords}");
        }

        if (setUp.IsForNoWinder)
        {
            writer.WriteLine("  NOTE  " + WindingSetUp.ForNoWinderWords);
        }

        foreach (Problem warning in setUp.Phase?.Warnings ?? [])
        {
            writer.WriteLine($"  {(setUp.Phase!.IsRed ? "STOP" : "NOTE")}  {warning.Message} ({warning.Understood})");
        }

        foreach (CoilSetUp coil in setUp.Coils)
        {
            writer.WriteLine();
            writer.WriteLine($"Coil {coil.Name}");
            Table table = new("set", "to", "");
            AddStop(table, setUp, coil);
            table.Add(
                "wire",
                coil.Wire,
                $"bare {Mm(coil.BareDiameterM.Value)}, overall {Mm(coil.OverallDiameterM.Value)}; "
                    + $"{FigureFormatter.WithInterval(coil.WireLength)}, {FigureFormatter.WithInterval(coil.WireMass)}"
            );
            table.Add(
                "tension",
                coil.Tension.OwnN is { } own ? Gf(own) : "not stated",
                $"band {Gf(coil.Tension.LowN)} – {Gf(coil.Tension.HighN)}, never above {Gf(coil.Tension.MaximumN)} "
                    + $"({TensionAdvice.Source}); {coil.Tension.Words}"
            );
            if (coil.OnMachine is { } on)
            {
                AddMachine(table, coil, on);
            }

            table.Add(
                coil.OnMachine is null ? "pitch" : "recipe's pitch",
                Mm(coil.PitchM),
                $"{FigureFormatter.Value(coil.TurnsPerLayer)} turns per layer, {FigureFormatter.Value(coil.Layers)} layers"
                    + (coil.PitchStated ? "" : "; from the lay")
            );
            table.Add("direction", coil.DirectionWords, coil.SpindleWords);
            table.Add("start", coil.StartSide, "");
            if (setUp.Phase?.Coils.FirstOrDefault(one => one.Name == coil.Name) is { FirstSwing: not 0 } signs)
            {
                table.Add("first swing", signs.FirstSwingWords, "iron brought near a pole; finish as the hot end");
            }

            double? speedRpm = coil.OnMachine is { } machine ? machine.SpeedRpm : coil.SpeedRpm;
            table.Add(
                "speed",
                speedRpm is { } speed ? Count(speed) + " rpm" : "not stated",
                coil.RunTimeS is { } seconds ? string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0.0} min") + Spindles(coil) : ""
            );
            AddMeter(table, coil.At20C);
            AddMeter(table, coil.AtRoom);
            table.Add(
                "first piece",
                FigureFormatter.Value(coil.Inductance),
                $"at 1 kHz, from {FigureFormatter.Interval(coil.Inductance)}; released when resistance, inductance and build are right"
            );
            table.Add("build", FigureFormatter.WithInterval(coil.Fill.Build), coil.Fill.Words);
            table.Write(writer);
            writer.WriteLine("  If the wire breaks at three quarters:");
            foreach (string choice in BreakAdvice.Choices(coil, coil.Turns * 0.75))
            {
                writer.WriteLine("    " + choice);
            }
        }

        writer.WriteLine();
        foreach (string line in CautionFormatter.Lines(Cautions.For(Job.Winding)))
        {
            writer.WriteLine(line);
        }
    }

    private static void AddStop(Table table, WindingSetUp setUp, CoilSetUp coil)
    {
        if (setUp.HasCounter)
        {
            string doubt = coil.OnMachine is { StopDoubtTurns: > 0 } on
                ? string.Create(CultureInfo.InvariantCulture, $", ± {on.StopDoubtTurns:0.#} turns")
                : "";
            table.Add(
                setUp.IsForNoWinder ? "real turns" : "counter stop",
                Count(coil.CounterStop(setUp.CounterCorrection)),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{coil.Turns:#,##0} real turns, correction × {setUp.CounterCorrection:0.000}, {setUp.CorrectionBasis}{doubt}"
                )
            );
        }
        else if (coil.OnMachine?.Timed is { } timed)
        {
            table.Add(
                "stop after",
                string.Create(CultureInfo.InvariantCulture, $"{timed.Seconds:0} s"),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{coil.Turns:#,##0} turns, but {timed.Turns.Low:#,##0} to {timed.Turns.High:#,##0} by the "
                        + $"clock{(timed.SpreadStated ? "" : " (our assumption of the spread: measure yours)")}"
                )
            );
            table.Add(
                "that means",
                Ohm(timed.DcResistanceAt20C.Value),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Ohm(timed.DcResistanceAt20C.Low)} – {Ohm(timed.DcResistanceAt20C.High)} at 20 °C; inductance × "
                        + $"{timed.InductanceLow:0.00} to × {timed.InductanceHigh:0.00}"
                )
            );
        }
        else
        {
            table.Add("stop after", "not known", "no counter, and neither recipe nor machine states a speed");
        }
    }

    private static void AddMachine(Table table, CoilSetUp coil, CoilOnMachine on)
    {
        table.Add(
            "pitch",
            Mm(on.Pitch.PitchM),
            string.Create(CultureInfo.InvariantCulture, $"{on.Pitch.How}; {on.TurnsPerLayer:0.#} turns per layer, {on.Layers:0.#} layers")
        );
        foreach (string note in ((string[])[on.Pitch.Note, on.SpeedWords, on.BrakeWords]).Where(note => note.Length > 0))
        {
            table.Add("note", "", note);
        }
    }

    private static string Spindles(CoilSetUp coil) =>
        coil.OnMachine is { Spindles: > 1 and var count } ? string.Create(CultureInfo.InvariantCulture, $" for {count} coils at once") : "";

    private static void AddMeter(Table table, ExpectedResistance resistance)
    {
        string limits = resistance is { LowOhm: { } low, HighOhm: { } high }
            ? $"passes from {Ohm(low)} to {Ohm(high)}"
            : $"no limit in the recipe; expected from {Ohm(resistance.Expected.Low)} to {Ohm(resistance.Expected.High)}";
        table.Add(
            $"meter at {QuantityParser.Format(resistance.TemperatureC, QuantityKind.Temperature)}",
            Ohm(resistance.Expected.Value),
            limits
        );
    }

    private static string Ohm(double ohm) => QuantityParser.Format(ohm, QuantityKind.Resistance);

    private static string Mm(double lengthM) => QuantityParser.FormatIn(lengthM, QuantityKind.Length, "mm");

    private static string Gf(double forceN) => QuantityParser.FormatIn(forceN, QuantityKind.Force, "gf");

    private static string Count(double count) => count.ToString("#,##0", CultureInfo.InvariantCulture);
}
