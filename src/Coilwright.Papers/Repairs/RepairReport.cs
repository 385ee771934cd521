using System.Globalization;
using Coilwright.Papers.Sheets;
using Coilwright.Papers.Spec;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Repairs;

/// <summary>A returned piece: readings at dispatch against now, both at 20 °C, the verdict, what was done, and the answer.</summary>
public static class RepairReport
{
    /// <summary>The sheet.</summary>
    /// <param name="content">What it says.</param>
    /// <param name="heading">Shop, revision of the piece, day.</param>
    /// <exception cref="ArgumentException">The content has problems: <see cref="RepairContent.Check"/> tells them all.</exception>
    public static Sheet Of(RepairContent content, SheetHeading heading)
    {
        if (content.Check() is { Count: > 0 } problems)
        {
            throw new ArgumentException(
                string.Join("; ", problems.Select(problem => $"{problem.Field}: {problem.Message}")),
                nameof(content)
            );
        }

        List<SheetPart> parts = [new FiguresPart([new KeyFigure("Verdict", content.Verdict)], 1)];
        parts.Add(new TitlePart("Complaint"));
        parts.AddRange(Paragraphs(content.Complaint));
        parts.Add(new TitlePart("Readings"));
        parts.Add(
            content.Readings.Count > 0
                ? new TablePart(
                    ["quantity", "at dispatch", "now", "change", "beyond the uncertainty"],
                    [.. content.Readings.Select(Row)],
                    [1.9, 1.7, 1.7, 1, 1.2]
                )
                : new TextPart("Nothing was read.")
        );
        parts.Add(new TitlePart("What was done"));
        parts.AddRange(content.Done.Count > 0 ? content.Done.Select(line => new TextPart("– " + line)) : [new TextPart("Nothing yet.")]);
        parts.Add(new CautionPart(string.Join(' ', Cautions.For(Job.Mending))));
        parts.Add(new TextPart("Cost: " + (content.Cost.Length > 0 ? content.Cost : "not settled")));
        if (content.Answer.Length > 0)
        {
            parts.Add(new TitlePart("Answer to the customer"));
            parts.AddRange(Paragraphs(content.Answer));
        }

        return new Sheet("Repair report", content.Serial, heading, parts, Sheet.CodeOf(content.Serial)) { OwnFacts = [.. Facts(content)] };
    }

    private static IEnumerable<SheetPart> Paragraphs(string text) =>
        text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(line => new TextPart(line));

    private static IEnumerable<(string Term, string Meaning)> Facts(RepairContent content)
    {
        foreach (
            (string term, string meaning) in ((string, string)[])
                [
                    ("Customer", content.Customer),
                    ("Recipe", content.Recipe),
                    ("Dispatched", Day(content.Dispatched)),
                    ("Came back", Day(content.CameBack)),
                ]
        )
        {
            if (meaning.Length > 0)
            {
                yield return (term, meaning);
            }
        }
    }

    private static string Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";

    private static IReadOnlyList<string> Row(RepairReading line)
    {
        PieceReading named = line.AtDispatch ?? line.Now!;
        (string change, string beyond) = (line.AtDispatch, line.Now) switch
        {
            ({ IsNumber: true } then, { IsNumber: true } now) when SameFrequency(then, now) => (
                ReadingFormatter.Signed(now.Comparable / then.Comparable - 1),
                Beyond(then, now)
            ),
            ({ IsNumber: true }, { IsNumber: true }) => ("other frequency", "–"),
            _ => ("–", "–"),
        };
        return [ReadingFormatter.Name(named), Side(line.AtDispatch), Side(line.Now), change, beyond];
    }

    private static string Side(PieceReading? reading)
    {
        if (reading is null)
        {
            return "not read";
        }

        string conditions = ReadingFormatter.Conditions(reading);
        return ReadingFormatter.Value(reading) + (conditions.Length > 0 ? $" ({conditions})" : "");
    }

    private static bool SameFrequency(PieceReading then, PieceReading now) =>
        then.AtHz is null && now.AtHz is null || (then.AtHz is { } one && now.AtHz is { } other && Math.Abs(one / other - 1) < 0.01);

    /// <summary>Two independent readings: their uncertainties add as squares.</summary>
    private static string Beyond(PieceReading then, PieceReading now)
    {
        if (then.HalfPart is not { } one || now.HalfPart is not { } other)
        {
            return "not stated";
        }

        return Math.Abs(now.Comparable / then.Comparable - 1) > Math.Sqrt(one * one + other * other) ? "yes" : "no";
    }
}
