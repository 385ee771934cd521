using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Papers.Formatting;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Learning;

namespace Coilwright.Output;

/// <summary>What a shop has learnt, for people at a terminal.</summary>
internal static class LearningFormatter
{
    public static void Write(TextWriter writer, LearningStatus status, bool asked)
    {
        if (status.Waiting is { } waiting)
        {
            WriteProposal(writer, status, waiting.Set);
        }
        else if (asked)
        {
            writer.WriteLine($"Nothing is proposed: {status.WhyNot}.");
        }

        if (status.WithoutTemperature > 0)
        {
            writer.WriteLine($"Left out, since nobody entered how warm they were: {Coils(status.WithoutTemperature)}.");
        }

        foreach (UnreadableRecord one in status.Unreadable)
        {
            writer.WriteLine($"{one.Name} cannot be read: {one.Why}.");
        }

        if (!asked)
        {
            WriteRecords(writer, status);
        }
    }

    private static void WriteProposal(TextWriter writer, LearningStatus status, LearntSet set)
    {
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Proposed set {set.Number}, from {status.OhmCoils} coils with DC resistance and {status.HenryCoils} with inductance:"
            )
        );
        foreach (LearntLine line in set.Lines)
        {
            writer.WriteLine("  " + Sentence(line));
        }

        if (status.Moves.Count > 0)
        {
            writer.WriteLine();
            writer.WriteLine("What it moves:");
            Table table = new("recipe", "coil", "quantity", "spool", "forecast now", "", "with the set", "");
            foreach (LearntMove move in status.Moves)
            {
                string unit = move.Quantity == QuantityKey.DcResistance ? "Ω" : "H";
                table.Add(
                    $"{move.Recipe} {move.Letter}",
                    move.Coil,
                    FigureFormatter.Name(move.Quantity),
                    move.Spool.Length > 0 ? move.Spool : "none named",
                    FigureFormatter.Value(move.Plain.Value, unit, 4),
                    PlusMinus(move.Plain),
                    FigureFormatter.Value(move.Learnt.Value, unit, 4),
                    PlusMinus(move.Learnt)
                );
            }

            table.Write(writer);
        }

        if (status.Hindsight is { Otherwise: > 0 } past)
        {
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Of {past.Coils} past coils without a target, {past.Otherwise} would have lain on the other side of a limit."
                )
            );
        }

        writer.WriteLine();
        writer.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"coilwright learn --accept {set.Number} --reason TEXT, or --decline {set.Number}")
        );
        writer.WriteLine("Accepting changes later forecasts and the limits of batches begun later; nothing on record changes.");
    }

    private static string Sentence(LearntLine line)
    {
        string what = FigureFormatter.Name(line.Quantity);
        string bad = line.LeftOut > 0 ? string.Create(CultureInfo.InvariantCulture, $", {line.LeftOut} of them left out as bad") : "";
        string apart = line.Apart
            ? $"mean turn {Percent(line.OfBobbin, line.OfBobbinHalf)}, ohms per metre {Percent(line.OfWire, line.OfWireHalf)}"
            : "mean turn or ohms per metre: the readings cannot tell which";
        string names = line.Quantity == QuantityKey.DcResistance ? $"; {apart}" : "";
        string of = line.Of.Length > 0 ? $" with {line.Of}" : "";
        return $"{line.Name}, bobbin {line.Bobbin}{of}: {what} {Percent(line.Correction, line.Half)} from {Coils(line.Coils)}{bad}, "
            + $"single coils scatter by {Number(line.Scatter)} %{names}";
    }

    private static void WriteRecords(TextWriter writer, LearningStatus status)
    {
        if (status.Sets.Count > 0)
        {
            Table sets = new("set", "state", "proposed", "decided", "by", "reason");
            foreach (SetStatus one in status.Sets)
            {
                sets.Add(
                    one.Set.Number.ToString(CultureInfo.InvariantCulture),
                    one.State,
                    Day(one.Proposal.TimeUtc),
                    one.Decision is { } decision ? Day(decision.TimeUtc) : "",
                    one.Decision?.Person ?? "",
                    one.Decision?.Reason ?? ""
                );
            }

            sets.Write(writer, "");
        }

        Table lines = new("line", "what", "coils", "ended", "reason");
        foreach (LineOfCoils line in status.Lines)
        {
            lines.Add(
                line.Name,
                line.Words,
                line.Coils.ToString(CultureInfo.InvariantCulture),
                line.Ending is { } ending ? Day(ending.TimeUtc) : "",
                line.Ending?.Reason ?? ""
            );
        }

        lines.Write(writer, "");
    }

    private static string Coils(int count) => count == 1 ? "1 coil" : string.Create(CultureInfo.InvariantCulture, $"{count} coils");

    private static string Day(DateTimeOffset time) => time.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string PlusMinus(Estimate estimate) =>
        "±" + ((estimate.High - estimate.Low) / (2 * estimate.Value) * 100).ToString("0.0", CultureInfo.InvariantCulture) + " %";

    private static string Percent(double part, double half) =>
        (part * 100).ToString("+0.00;−0.00", CultureInfo.InvariantCulture) + " % ± " + Number(half) + " %";

    private static string Number(double part) => (part * 100).ToString("0.00", CultureInfo.InvariantCulture);
}
