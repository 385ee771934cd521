using Coilwright.Workshop;

namespace Coilwright.Output;

/// <summary>A batch for people: one line a coil.</summary>
internal static class PlainBatch
{
    public static void Write(TextWriter writer, BatchStanding standing)
    {
        writer.WriteLine($"Batch {standing.Batch.Name}: {standing.RecipeName} {standing.RevisionLetter}, coil {standing.Batch.CoilName}, {standing.CountWords}");
        IReadOnlySet<string> beyond = standing.Beyond;
        Table table = new("tag", "typed", "at 20 °C", "verdict", "why");
        foreach (CoilStanding coil in standing.Coils)
        {
            string typed = coil.InForce.FirstOrDefault(reading => reading.Quantity == "dcResistance")?.Typed ?? "–";
            table.Add(coil.Tag, typed, VerdictWords.At20C(coil.Verdict), VerdictWords.Word(coil.Verdict.Kind), (beyond.Contains(coil.Tag) ? "beyond the number; " : "") + VerdictWords.Why(coil.Verdict));
        }

        table.Write(writer);
        foreach (string remark in standing.Remarks)
        {
            writer.WriteLine($"Note: {remark}.");
        }
    }
}
