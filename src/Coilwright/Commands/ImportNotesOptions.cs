using System.CommandLine;
using System.Globalization;
using Coilwright.Application.Notes;
using Coilwright.Formats.Notes;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Notes;

namespace Coilwright.Commands;

/// <summary>What coilwright import asks of old notes: the batch they go into, and what their columns mean.</summary>
internal sealed class ImportNotesOptions
{
    private readonly Option<string?> _batch = new("--batch")
    {
        Description = "For notes: the batch; begun when the shop has none of this name",
        HelpName = "NAME",
    };
    private readonly Option<string?> _recipe = new("--recipe")
    {
        Description = "For a batch that is begun: a recipe of the shop; its newest released revision is taken",
        HelpName = "NAME",
    };
    private readonly Option<string?> _coil = new("--coil") { Description = "For a batch that is begun: which coil; the first unless said" };
    private readonly Option<string[]> _columns = new("--column")
    {
        Description = "For notes: what a column is read as: \"R old=dcResistance [kΩ]\", or \"R old=-\" to leave it aside",
        HelpName = "HEADING=QUANTITY",
        DefaultValueFactory = _ => [],
    };

    public void AddTo(Command command)
    {
        foreach (Option option in (Option[])[_batch, _recipe, _coil, _columns])
        {
            command.Add(option);
        }
    }

    public async Task<int> RunAsync(
        CommandContext desk,
        ParseResult parsed,
        EntryOptions entry,
        string path,
        bool dryRun,
        CancellationToken cancel
    )
    {
        NoteTable table = new(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false), Said(parsed));
        Write(desk.Output, path, table);
        if (table.Problems.Count > 0)
        {
            throw new WrongInputException(path, table.Problems);
        }

        if (parsed.GetValue(_batch) is not { } name)
        {
            return dryRun
                ? ExitCode.Done
                : throw WrongInputException.About(
                    "--batch",
                    "say which batch these coils belong to",
                    "its name; or --dry-run to look alone"
                );
        }

        await using OpenShop open = await OpenAsync(desk, parsed, entry, dryRun, cancel).ConfigureAwait(false);
        NoteTarget target = await TargetAsync(parsed, open, name, entry.Person(parsed), cancel).ConfigureAwait(false);
        NoteOutcome outcome = await open.Use<ImportNotes>().RunAsync(table, target, dryRun, cancel).ConfigureAwait(false);
        if (outcome.Problems.Count > 0)
        {
            throw new WrongInputException(path, outcome.Problems);
        }

        foreach (string note in outcome.Notes)
        {
            await desk.Output.WriteLineAsync("Note: " + note).ConfigureAwait(false);
        }

        await desk.Output.WriteLineAsync(Words(outcome, target, dryRun)).ConfigureAwait(false);
        return ExitCode.Done;
    }

    /// <summary>A look makes no shop, and says nothing of its clock.</summary>
    private static Task<OpenShop> OpenAsync(
        CommandContext desk,
        ParseResult parsed,
        EntryOptions entry,
        bool dryRun,
        CancellationToken cancel
    ) => dryRun ? entry.LookAsync(parsed, desk, cancel) : entry.OpenAsync(parsed, desk, cancel);

    private async Task<NoteTarget> TargetAsync(ParseResult parsed, OpenShop open, string name, string person, CancellationToken cancel)
    {
        IReadOnlyList<BatchRecord> batches = await open.Records.Batches.AllAsync(cancel).ConfigureAwait(false);
        if (batches.Any(batch => NameKey.Same(batch.Name, name)))
        {
            return new NoteTarget(await open.FindBatchRecordAsync(name, cancel).ConfigureAwait(false), name, null, null, person);
        }

        string recipe = parsed.GetValue(_recipe)
            ?? throw WrongInputException.About(
                "--recipe",
                $"there is no batch \"{name}\" yet; say on which recipe it is begun",
                "the name of a recipe of the shop"
            );
        return new NoteTarget(
            null,
            name,
            await open.FindReleasedAsync(recipe, cancel).ConfigureAwait(false),
            parsed.GetValue(_coil),
            person
        );
    }

    private List<(string Header, string Meaning)> Said(ParseResult parsed)
    {
        List<(string Header, string Meaning)> said = [];
        foreach (string one in parsed.GetValue(_columns) ?? [])
        {
            int at = one.LastIndexOf('=');
            said.Add(
                at > 0
                    ? (one[..at], one[(at + 1)..])
                    : throw WrongInputException.About("--column", $"\"{one}\" does not say what the column is", "HEADING=QUANTITY")
            );
        }

        return said;
    }

    private static void Write(TextWriter output, string path, NoteTable table)
    {
        string parted = table.CommaIsDecimal ? "semicolons; a comma is the decimal sign" : "commas; a point is the decimal sign";
        output.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileName(path)}: {table.Lines} lines, columns parted by {parted}")
        );
        Table lines = new("column", "read as", "unit", "for example");
        foreach (NoteColumn column in table.Columns)
        {
            string from = column.UnitFrom.Length > 0 ? $" ({column.UnitFrom})" : "";
            lines.Add(
                column.Header.Length > 0 ? column.Header : "(no heading)",
                column.Role?.Label ?? "left aside",
                (column.Unit + from).Trim(),
                string.Join("; ", column.Examples)
            );
        }

        lines.Write(output, "");
        output.WriteLine("A column that is read wrongly: --column \"HEADING=dcResistance [kΩ]\", or \"HEADING=-\" to leave it aside.");
    }

    private static string Words(NoteOutcome outcome, NoteTarget target, bool dryRun)
    {
        string coils = string.Create(CultureInfo.InvariantCulture, $"{outcome.Coils:#,##0} coil{(outcome.Coils == 1 ? "" : "s")}"),
            begun = target.Batch is null ? ", which is begun" : "",
            there = outcome.AlreadyThere > 0
                ? string.Create(CultureInfo.InvariantCulture, $"; {outcome.AlreadyThere} were there already")
                : "";
        return dryRun
            ? $"This would bring {coils} into batch {target.Name}{begun}{there}. Nothing was written."
            : $"Brought {coils} into batch {target.Name}{begun}{there}.";
    }
}
