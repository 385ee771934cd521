using System.Globalization;
using Coilwright.Papers.Words;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Output;

/// <summary>A set-up for people at a terminal.</summary>
public static class PlainSetUp
{
    public static void Write(TextWriter writer, WindingSetUp setUp)
    {
        writer.WriteLine($"Set-up: {setUp.RecipeName}" + (setUp.Machine.Length > 0 ? $" on {setUp.Machine}" : ""));
        foreach (Problem warning in setUp.Phase?.Warnings ?? [])
        {
            writer.WriteLine($"  {(setUp.Phase!.IsRed ? "STOP" : "NOTE")}  {warning.Message} ({warning.Understood})");
        }

        foreach (CoilSetUp coil in setUp.Coils)
        {
            writer.WriteLine();
            writer.WriteLine($"Coil {coil.Name}");
            Table table = new("set", "to", "");
            table.Add("counter stop", Count(coil.CounterStop(setUp.CounterCorrection)), string.Create(CultureInfo.InvariantCulture, $"{coil.Turns:#,##0} real turns, correction × {setUp.CounterCorrection:0.000}, {setUp.CorrectionBasis}"));
            table.Add("wire", coil.Wire, $"bare {Mm(coil.BareDiameterM.Value)}, overall {Mm(coil.OverallDiameterM.Value)}; {FigureWords.Value(coil.WireLength)}, {FigureWords.Value(coil.WireMass)}");
            table.Add("tension", coil.Tension.OwnN is { } own ? Gf(own) : "not stated", $"band {Gf(coil.Tension.LowN)} – {Gf(coil.Tension.HighN)}, never above {Gf(coil.Tension.MaximumN)}; {coil.Tension.Words}");
            table.Add("pitch", Mm(coil.PitchM), $"{FigureWords.Value(coil.TurnsPerLayer)} turns per layer, {FigureWords.Value(coil.Layers)} layers" + (coil.PitchStated ? "" : "; from the lay"));
            table.Add("direction", coil.DirectionWords, coil.SpindleWords);
            table.Add("start", coil.StartSide, "");
            table.Add("speed", coil.SpeedRpm is { } speed ? Count(speed) + " rpm" : "not stated", coil.RunTimeS is { } seconds ? string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0.0} min") : "");
            if (setUp.Phase?.Coils.FirstOrDefault(one => one.Name == coil.Name) is { FirstSwing: not 0 } signs)
            {
                table.Add("first swing", signs.FirstSwingWords, "iron brought near a pole; finish as the hot end");
            }

            AddMeter(table, coil.At20C);
            AddMeter(table, coil.AtRoom);
            table.Add("build", FigureWords.Value(coil.Fill.Build), coil.Fill.Words);
            table.Write(writer);
            writer.WriteLine("  If the wire breaks at three quarters:");
            foreach (string choice in BreakAdvice.Choices(coil, coil.Turns * 0.75))
            {
                writer.WriteLine("    " + choice);
            }
        }

        writer.WriteLine();
        foreach (string caution in (string[])[Cautions.Spindle, Cautions.FineWire, Cautions.EndFume])
        {
            writer.WriteLine("  CAUTION  " + caution);
        }

        writer.WriteLine("  " + Cautions.ClosingLine);
    }

    private static void AddMeter(Table table, ExpectedResistance resistance)
    {
        string limits = resistance is { LowOhm: { } low, HighOhm: { } high } ? $"passes from {Ohm(low)} to {Ohm(high)}" : $"no limit in the recipe; expected from {Ohm(resistance.Expected.Low)} to {Ohm(resistance.Expected.High)}";
        table.Add($"meter at {QuantityText.Format(resistance.TemperatureC, QuantityKind.Temperature)}", Ohm(resistance.Expected.Value), limits);
    }

    private static string Ohm(double ohm) => QuantityText.Format(ohm, QuantityKind.Resistance);

    private static string Mm(double lengthM) => QuantityText.FormatIn(lengthM, QuantityKind.Length, "mm");

    private static string Gf(double forceN) => QuantityText.FormatIn(forceN, QuantityKind.Force, "gf");

    private static string Count(double count) => count.ToString("#,##0", CultureInfo.InvariantCulture);
}
