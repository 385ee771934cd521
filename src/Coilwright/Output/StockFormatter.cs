using System.Globalization;
using Coilwright.Physics;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Stock;

namespace Coilwright.Output;

/// <summary>Spools for people at a terminal.</summary>
internal static class StockFormatter
{
    public static void WriteShelf(TextWriter writer, IReadOnlyList<SpoolStatus> shelf)
    {
        Table table = new("spool", "wire", "Ω/m at 20 °C", "left", "from", "coils");
        foreach (SpoolStatus one in shelf)
        {
            table.Add(
                one.Spool.Label,
                $"{one.Spool.Gauge} {KeyLabels.Of(one.Spool.Insulation)} {KeyLabels.Of(one.Spool.Build)}",
                one.Measure is { } measure ? Per(measure) : "not measured",
                one.RemainingM is { } left ? Metres(left) : "not known",
                one.RemainingWords,
                string.Create(CultureInfo.InvariantCulture, $"{one.Coils}")
            );
        }

        table.Write(writer, "");
    }

    public static void WriteSpool(TextWriter writer, SpoolStatus one, CoilPlan? plan, int coils)
    {
        writer.WriteLine(
            $"Spool {one.Spool.Label}: {one.Spool.Gauge} {KeyLabels.Of(one.Spool.Insulation)}, {KeyLabels.Of(one.Spool.Build)}"
                + (one.Spool.Lot.Length > 0 ? $", lot {one.Spool.Lot}" : "")
                + (one.Spool.SupplierText.Length > 0 ? $", \"{one.Spool.SupplierText}\"" : "")
        );
        if (one.Measure is { } measure)
        {
            Estimate bare = measure.BareDiameterM;
            writer.WriteLine(
                $"  measured   {Per(measure)} at 20 °C ({measure.OhmPerM.Low.ToString("0.000", CultureInfo.InvariantCulture)} – "
                    + $"{measure.OhmPerM.High.ToString("0.000", CultureInfo.InvariantCulture)})"
            );
            writer.WriteLine($"  diameter   {Um(bare.Value)} bare implied ({Um(bare.Low)} – {Um(bare.High)})");
        }

        writer.WriteLine($"  left       {(one.RemainingM is { } left ? Metres(left) : "not known")}: {one.RemainingWords}");
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"  booked     {one.UsedM:0} m by {one.Coils} coils, {one.Scrapped} of them scrapped"
            )
        );
        if (plan is not null)
        {
            WritePlan(writer, one, plan, coils);
        }
    }

    private static void WritePlan(TextWriter writer, SpoolStatus one, CoilPlan plan, int coils)
    {
        double wireM = plan.SetUp.WireLength.Value;
        if (one.CoilsLeft(wireM) is { } left)
        {
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  coils      {left.Fewest} to {left.Most} more of {wireM:0} m"));
        }

        if (coils > 0)
        {
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  finishes {coils} coils: {one.WillFinish(coils, wireM)}"));
        }

        if (one.Measure is { } measure)
        {
            SpoolDecision decision = SpoolDecision.For(plan, measure);
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  keep turns {decision.RecipeTurns:0} turns read {Ohms(decision.HoldTurnsOhm.Value)} "
                        + $"({Ohms(decision.HoldTurnsOhm.Low)} – {Ohms(decision.HoldTurnsOhm.High)}; "
                        + $"recipe's wire {Ohms(decision.RecipeOhm)}), inductance unchanged"
                )
            );
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  keep ohms  {decision.HoldOhmsTurns:0} turns, inductance {(decision.HoldOhmsInductance - 1) * 100:+0.0;-0.0} %, "
                        + $"output {decision.HoldOhmsOutputDb:+0.00;-0.00} dB"
                )
            );
        }
    }

    private static string Ohms(double ohm) => QuantityParser.Format(ohm, QuantityKind.Resistance);

    private static string Per(SpoolMeasure measure) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{measure.OhmPerM.Value:0.000} Ω/m, {measure.OverNominal * 100:+0.0;-0.0} % on nominal"
        );

    private static string Metres(Estimate left) =>
        string.Create(CultureInfo.InvariantCulture, $"{left.Value:0} m ({left.Low:0} – {left.High:0})");

    private static string Um(double lengthM) => QuantityParser.FormatIn(lengthM, QuantityKind.Length, "mm", 3);
}
