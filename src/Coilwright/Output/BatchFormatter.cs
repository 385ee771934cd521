using Coilwright.Analysis.Quantities;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Output;

/// <summary>A batch for people: one line a coil.</summary>
internal static class BatchFormatter
{
    public static void Write(TextWriter writer, BatchStatus standing)
    {
        writer.WriteLine(
            $"Batch {standing.Batch.Name}: {standing.RecipeName} {standing.RevisionLetter}, coil "
                + $"{standing.Batch.CoilName}, {standing.CountWords}"
        );
        IReadOnlySet<string> beyond = standing.Beyond;
        Table table = new("tag", "typed", "at 20 °C", "verdict", "why");
        foreach (CoilDossier coil in standing.Coils)
        {
            string typed = coil.InForce.FirstOrDefault(reading => reading.Quantity == QuantityKey.DcResistance)?.Typed ?? "–";
            table.Add(
                coil.Tag,
                typed,
                VerdictFormatter.At20C(coil.Verdict),
                VerdictFormatter.Word(coil.Verdict.Kind),
                (beyond.Contains(coil.Tag) ? "beyond the number; " : "") + VerdictFormatter.Why(coil.Verdict)
            );
        }

        table.Write(writer);
        if (standing.Limits.Origin is { } limits)
        {
            writer.WriteLine($"Judged by {limits.Words}.");
        }

        foreach (BatchRemark remark in standing.Remarks)
        {
            writer.WriteLine($"The batch: {remark.Sentence}.");
        }
    }

    /// <summary>A batch by its stored numbers alone.</summary>
    public static void WriteStored(TextWriter writer, StoredBatch? stored)
    {
        if (stored is null)
        {
            return;
        }

        Table table = new("tag", "quantity", "typed", "understood");
        foreach (StoredReading one in stored.InForce)
        {
            table.Add(one.Tag, PieceEventFormatter.Quantity(one.Reading.Quantity), one.Reading.Typed, one.Words);
        }

        table.Write(writer);
    }
}
