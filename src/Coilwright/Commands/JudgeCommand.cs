using System.CommandLine;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Readings;

namespace Coilwright.Commands;

/// <summary>coilwright judge RECIPE READINGS.csv: a verdict per coil. Exit 1 when one is rejected.</summary>
public static class JudgeCommand
{
    public static Command Build(Desk desk)
    {
        Argument<string> recipe = new("RECIPE") { Description = "A recipe file (coilwright.recipe/1)" }, readings = new("READINGS") { Description = "A table: tag,dcResistance [kΩ],temperature [°C],…; - reads standard input" };
        Option<string?> coil = new("--coil") { Description = "Which coil of the recipe; the first unless said", HelpName = "NAME" };
        Option<bool> json = new("--json") { Description = "Write coilwright.judgement/1" };
        Command command = new("judge", "A verdict for each coil of a table, with the probable cause") { recipe, readings, coil, json };
        command.SetAction(async (parsed, cancel) =>
        {
            RecipeFile file = await RecipeFile.ReadAsync(parsed.GetRequiredValue(recipe), cancel).ConfigureAwait(false);
            string path = parsed.GetRequiredValue(readings);
            IReadOnlyList<ReadingRow> rows = ReadingTable.Read(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false), desk.Time.GetUtcNow()).OrRefuse(path);
            int index = CoilIndex(file, parsed.GetValue(coil));
            IReadOnlyList<JudgedPiece> pieces = Judge(file, index, rows);
            IReadOnlyList<ChartSignal> signals = [];
            if (parsed.GetValue(json))
            {
                await desk.Output.WriteLineAsync(JudgementJson.Write(pieces, signals)).ConfigureAwait(false);
            }
            else
            {
                WritePlain(desk.Output, rows, pieces, signals);
            }

            return pieces.Any(piece => piece.Verdict.Kind == VerdictKind.Reject) ? ExitCode.AnswerIsNo : ExitCode.Done;
        });
        return command;
    }

    private static IReadOnlyList<JudgedPiece> Judge(RecipeFile file, int index, IReadOnlyList<ReadingRow> rows) => throw new NotImplementedException();

    private static int CoilIndex(RecipeFile file, string? name)
    {
        int index = name is null ? 0 : file.Recipe.Coils.ToList().FindIndex(coil => string.Equals(coil.Name, name, StringComparison.OrdinalIgnoreCase));
        return index >= 0 ? index : throw WrongInputException.About("--coil", $"the recipe has no coil \"{name}\"", string.Join(", ", file.Recipe.Coils.Select(coil => coil.Name)));
    }

    private static void WritePlain(TextWriter writer, IReadOnlyList<ReadingRow> rows, IReadOnlyList<JudgedPiece> pieces, IReadOnlyList<ChartSignal> signals)
    {
        Table table = new("tag", "read", "at 20 °C", "verdict", "why");
        foreach ((ReadingRow row, JudgedPiece piece) in rows.Zip(pieces))
        {
            string typed = row.Readings.FirstOrDefault(reading => reading.Quantity == "dcResistance") is { } reading ? $"{reading.Typed} {reading.Unit}".Trim() : "–";
            table.Add(piece.Tag, typed, VerdictWords.At20C(piece.Verdict), VerdictWords.Word(piece.Verdict.Kind), VerdictWords.Why(piece.Verdict));
        }

        table.Write(writer, "");
        foreach (ChartSignal signal in signals)
        {
            writer.WriteLine($"Signal at {signal.Tag}: {signal.Rule}");
        }
    }
}
