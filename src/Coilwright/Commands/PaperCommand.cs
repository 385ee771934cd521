using System.CommandLine;
using Coilwright.Application.Printing;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Papers.Cards;
using Coilwright.Papers.Labels;
using Coilwright.Papers.Pieces;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Commands;

/// <summary>coilwright paper spec|traveller|card|wiring|parts|labels RECIPE, paper piece KIND SERIAL: papers as PDF or HTML.</summary>
public static class PaperCommand
{
    private const int MostLabels = 1_000;

    public static Command Build(CommandContext desk) =>
        new("paper", "Papers of a recipe, as a PDF that needs nothing from outside, or for the screen")
        {
            Spec(desk),
            Steps(desk),
            Card(desk),
            Wires(desk),
            PaperPartsCommand.Build(desk),
            Labels(desk),
            PaperPieceCommand.Build(desk),
            PaperLabelCommand.Build(desk),
        };

    private static Command Spec(CommandContext desk)
    {
        PaperOptions options = new();
        Option<string?> load = new("--load")
        {
            Description = "A load file (coilwright.load/1); a usual player's load unless said",
            HelpName = "LOAD",
        };
        Option<bool> hide = new("--hide-turns") { Description = "Leave the turns out, also where the recipe does not ask for it" };
        Command command = new("spec", "The spec sheet of the model: forecast values, load, response")
        {
            options.Recipe,
            load,
            hide,
            options.Pdf,
            options.Html,
            options.Size,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                options.Check(parsed);
                Recipe recipe = await RecipeFile.ReadAsync(parsed.GetRequiredValue(options.Recipe), cancel).ConfigureAwait(false);
                LoadOption chosen = await LoadOption.ReadAsync(parsed.GetValue(load), cancel).ConfigureAwait(false);
                Sheet sheet = await Progress
                    .ShowAsync(
                        desk,
                        "Forecasting",
                        () => desk.Use<PrintRecipePaper>().Spec(recipe, chosen.Circuit, Today(desk), parsed.GetValue(hide), cancel),
                        cancel
                    )
                    .ConfigureAwait(false);
                return await options.WriteAsync(desk, parsed, sheet, cancel).ConfigureAwait(false);
            }
        );
        return command;
    }

    private static Command Steps(CommandContext desk)
    {
        PaperOptions options = new();
        Command command = new("traveller", "The paper that travels with a piece: steps, holds, cautions")
        {
            options.Recipe,
            options.Pdf,
            options.Html,
            options.Size,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                options.Check(parsed);
                Recipe recipe = await RecipeFile.ReadAsync(parsed.GetRequiredValue(options.Recipe), cancel).ConfigureAwait(false);
                return await options.WriteAsync(desk, parsed, Traveller.Of(recipe, Today(desk)), cancel).ConfigureAwait(false);
            }
        );
        return command;
    }

    private static Command Card(CommandContext desk)
    {
        PaperOptions options = new();
        Command command = new("card", "The recipe card: what a winder needs, to be read from a metre away")
        {
            options.Recipe,
            options.Pdf,
            options.Html,
            options.Size,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                options.Check(parsed);
                Recipe recipe = await RecipeFile.ReadAsync(parsed.GetRequiredValue(options.Recipe), cancel).ConfigureAwait(false);
                Sheet sheet = await Progress
                    .ShowAsync(
                        desk,
                        "Forecasting",
                        () => desk.Use<PrintRecipePaper>().Card(recipe, parts: null, Today(desk), new RecipeStatus(), cancel),
                        cancel
                    )
                    .ConfigureAwait(false);
                return await options.WriteAsync(desk, parsed, sheet, cancel).ConfigureAwait(false);
            }
        );
        return command;
    }

    private static Command Wires(CommandContext desk)
    {
        PaperOptions options = new();
        Option<string?> rules = new("--rules")
        {
            Description = "The shop's rules (coilwright.rules/1) with its lead colours; lines to fill by hand unless said",
            HelpName = "FILE",
        };
        Command command = new("wiring", "The wiring sheet: directions, poles, phase and hum, the test with iron")
        {
            options.Recipe,
            rules,
            options.Pdf,
            options.Html,
            options.Size,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                options.Check(parsed);
                Recipe recipe = await RecipeFile.ReadAsync(parsed.GetRequiredValue(options.Recipe), cancel).ConfigureAwait(false);
                ShopRules own = parsed.GetValue(rules) is { } path
                    ? ShopRulesReader.ReadFile(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false)).OrRefuse(path)
                    : new ShopRules();
                return await options
                    .WriteAsync(desk, parsed, PiecePapers.WiringOf(recipe, "", new PaperGround("", own, desk.Time.GetUtcNow())), cancel)
                    .ConfigureAwait(false);
            }
        );
        return command;
    }

    private static Command Labels(CommandContext desk)
    {
        PaperOptions options = new();
        Option<int> count = new Option<int>("--count") { Description = "How many", DefaultValueFactory = _ => 12 }.AsCount(),
            first = new Option<int>("--first") { Description = "The first number", DefaultValueFactory = _ => 1 }.AsCount();
        Option<string> prefix = new("--prefix") { Description = "What stands before the number", DefaultValueFactory = _ => "P-" };
        Command command = new("labels", "Labels with Code 128 and QR, as a PDF")
        {
            options.Recipe,
            count,
            first,
            prefix,
            options.Pdf,
            options.Size,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                OptionReader typed = new();
                (int number, int from, string before) = (parsed.GetValue(count), parsed.GetValue(first), parsed.GetValue(prefix)!);
                Within(typed, "--count", number, MostLabels);
                Within(typed, "--first", from, 1_000_000);
                if (before.Length > 24 || before.Any(letter => letter is < ' ' or > '~'))
                {
                    typed.Add("--prefix", "cannot be put into a bar code", before, "up to 24 plain letters, digits and signs");
                }

                typed.RefuseIfWrong();
                options.Check(parsed);
                Recipe recipe = await RecipeFile.ReadAsync(parsed.GetRequiredValue(options.Recipe), cancel).ConfigureAwait(false);
                string[] lines = [recipe.Name, string.Join(", ", recipe.Coils.Select(coil => coil.Name))];
                IEnumerable<string> codes = Enumerable.Range(from, number).Select(at => FormattableString.Invariant($"{before}{at:000}"));
                PieceLabel[] labels = [.. codes.Select(code => new PieceLabel(code, code, lines, ChargeRule.HasMagnets(recipe)))];
                return await options.WriteAsync(desk, parsed, LabelPdf.Render(labels, options.Paper(parsed)), cancel).ConfigureAwait(false);
            }
        );
        return command;
    }

    private static void Within(OptionReader typed, string option, int value, int most)
    {
        if (value < 1 || value > most)
        {
            typed.Add(
                option,
                "outside the allowed range",
                FormattableString.Invariant($"{value}"),
                FormattableString.Invariant($"1 to {most:#,##0}")
            );
        }
    }

    private static SheetHeading Today(CommandContext desk) => new(Date: DateOnly.FromDateTime(desk.LocalNow.DateTime));
}
