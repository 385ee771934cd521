using System.CommandLine;
using Coilwright.Analysis.Quantities;
using Coilwright.Application.Judging;
using Coilwright.Formats.Judgements;
using Coilwright.Formats.Tables;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Commands;

/// <summary>coilwright judge RECIPE READINGS.csv: a verdict per coil. Exit 1 when one is rejected.</summary>
public static class JudgeCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> recipe = new("RECIPE") { Description = "A recipe file (coilwright.recipe/1)" },
            readings = new("READINGS") { Description = "A table: tag,dcResistance [kΩ],temperature [°C],…; - reads standard input" };
        Option<string?> coil = new("--coil")
        {
            Description =
                "Which coil of the recipe the readings are of; unless said, the whole pickup, or the first coil where "
                + "most readings fit that one",
            HelpName = "NAME",
        };
        Option<string> golden = new("--golden")
        {
            Description = "Tag of the golden piece; the line tagged \"golden\" unless said",
            HelpName = "TAG",
            DefaultValueFactory = _ => "golden",
        };
        Option<double> meter = new Option<double>("--meter")
        {
            Description = "Uncertainty of the resistance meter in per cent (95 %): the guard band at the limits",
            HelpName = "PERCENT",
            DefaultValueFactory = _ => 0.1,
        }.AsNumber();
        Option<bool> charts = new("--charts")
        {
            Description = "All charts of the run: single coils, moving range, moving average, cumulative sums, with capability",
        };
        Option<int> group = new Option<int>("--group")
        {
            Description = "With --charts: coils in a subgroup, for means and ranges; 1 charts single coils",
            HelpName = "COILS",
            DefaultValueFactory = _ => 1,
        }.AsCount();
        Option<bool> json = new("--json") { Description = "Write coilwright.judgement/1" };
        LearningOptions learning = new();
        Command command = new("judge", "A verdict for each coil of a table, with the probable cause")
        {
            recipe,
            readings,
            coil,
            golden,
            meter,
            charts,
            group,
            json,
        };
        learning.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                Recipe reference = await learning.ReadAsync(parsed.GetRequiredValue(recipe), parsed, desk, cancel).ConfigureAwait(false);
                string path = parsed.GetRequiredValue(readings);
                List<string> notes = [];
                ReadOutcome<IReadOnlyList<ReadingRow>> read = ReadingTable.Read(
                    await InputFile.ReadAsync(path, cancel).ConfigureAwait(false),
                    desk.Time.GetUtcNow(),
                    notes
                );
                if (parsed.GetValue(json) || !read.Ok)
                {
                    notes.ForEach(desk.Error.WriteLine);
                }

                IReadOnlyList<ReadingRow> rows = read.OrRefuse(path);
                double meterPart = MeterPart(parsed.GetValue(meter));
                int size = parsed.GetValue(group) is >= 1 and <= 50 and int coils
                    ? coils
                    : throw WrongInputException.About("--group", "this is no size of a subgroup", "1 to 50");
                TableQuestion question = new(CoilIndex(reference, parsed.GetValue(coil)), parsed.GetRequiredValue(golden), meterPart)
                {
                    Subgroup = parsed.GetValue(charts) ? size : null,
                };
                TableJudgement judged = await Progress
                    .ShowAsync(desk, $"Judging {rows.Count} coils", () => desk.Use<JudgeTable>().Judge(reference, rows, question), cancel)
                    .ConfigureAwait(false);
                if (parsed.GetValue(json))
                {
                    await desk
                        .Output.WriteLineAsync(JudgementJson.Write(judged.Pieces, judged.Run, judged.Charts, judged.Remarks))
                        .ConfigureAwait(false);
                }
                else
                {
                    WritePlain(desk.Output, rows, judged.Pieces, judged.Run, judged.Remarks);
                    notes.ForEach(desk.Output.WriteLine);
                    if (judged.Charts is { } all)
                    {
                        ControlChartFormatter.Write(desk.Output, all);
                    }
                }

                return judged.Pieces.Any(piece => piece.Verdict.Kind == VerdictKind.Reject) ? ExitCode.AnswerIsNo : ExitCode.Done;
            }
        );
        return command;
    }

    private static double MeterPart(double percent) =>
        percent is >= 0 and <= 10
            ? percent / 100
            : throw WrongInputException.About("--meter", "this is not a meter's uncertainty", "0 to 10 (%)");

    private static int? CoilIndex(Recipe recipe, string? name)
    {
        if (name is null)
        {
            return null;
        }

        int index = recipe.Coils.ToList().FindIndex(coil => string.Equals(coil.Name, name, StringComparison.OrdinalIgnoreCase));
        return index >= 0
            ? index
            : throw WrongInputException.About(
                "--coil",
                $"the recipe has no coil \"{name}\"",
                string.Join(", ", recipe.Coils.Select(coil => coil.Name))
            );
    }

    /// <summary>What the meter showed, its unit once: as typed where a bare number was typed, else as understood.</summary>
    private static string AsRead(ReadingRecord reading)
    {
        if (reading.Si is not { } si)
        {
            return reading.Typed;
        }

        bool bare = reading.Typed.Length > 0 && char.IsAsciiDigit(reading.Typed[^1]);
        return bare
            ? $"{reading.Typed} {reading.Unit}"
            : QuantityParser.Echo(new Entered(si, reading.Typed, reading.Unit), QuantityKind.Resistance);
    }

    private static void WritePlain(
        TextWriter writer,
        IReadOnlyList<ReadingRow> rows,
        IReadOnlyList<JudgedPiece> pieces,
        RunChart? chart,
        IReadOnlyList<BatchRemark> remarks
    )
    {
        Table table = new("tag", "read", "at 20 °C", "verdict", "why");
        foreach ((ReadingRow row, JudgedPiece piece) in rows.Zip(pieces))
        {
            string typed = row.Readings.FirstOrDefault(reading => reading.Quantity == QuantityKey.DcResistance) is { } reading
                ? AsRead(reading)
                : "–";
            table.Add(
                piece.Tag,
                typed,
                VerdictFormatter.At20C(piece.Verdict),
                VerdictFormatter.Word(piece.Verdict.Kind),
                VerdictFormatter.Why(piece.Verdict)
            );
        }

        table.Write(writer, "");
        foreach (BatchRemark remark in remarks)
        {
            writer.WriteLine($"The batch: {remark.Sentence}.");
        }

        foreach ((string tag, string rule) in chart?.Signals ?? [])
        {
            writer.WriteLine($"Signal at {tag}: {rule}");
        }

        if (chart is { Signals.Count: > 0 })
        {
            writer.WriteLine(
                FormattableString.Invariant(
                    $"Limits from the first {chart.LimitsFrom}; expect one false alarm in about {chart.FalseAlarmEvery:0} good coils."
                )
            );
            writer.WriteLine($"Signals: {VerdictAdvice.DriftChecks}.");
        }
    }
}
