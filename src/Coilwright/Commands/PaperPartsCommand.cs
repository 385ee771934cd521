using System.CommandLine;
using Coilwright.Application.Printing;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Parts;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Commands;

/// <summary>coilwright paper parts RECIPE: what a number of pieces is made of.</summary>
internal static class PaperPartsCommand
{
    public static Command Build(CommandContext desk)
    {
        PaperOptions options = new();
        Option<int> count = new Option<int>("--count") { Description = "How many pieces", DefaultValueFactory = _ => 1 }.AsCount();
        Option<string[]> option = new("--option")
        {
            Description = "A choice that changes parts and labels only: \"cover: nickel silver\"; may be repeated",
        };
        Command command = new("parts", "The parts list: parts, options, and the wire by mass")
        {
            options.Recipe,
            count,
            option,
            options.Pdf,
            options.Html,
            options.Size,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                options.Check(parsed);
                Recipe recipe = await RecipeFile.ReadAsync(parsed.GetRequiredValue(options.Recipe), cancel).ConfigureAwait(false);
                List<Problem> problems = [];
                IReadOnlyList<PartOption> chosen = PartOption.Of(recipe, parsed.GetValue(option) ?? [], problems);
                if (parsed.GetValue(count) is < 1 or > PartsList.MostPieces)
                {
                    problems.Add(
                        new Problem(
                            "--count",
                            "outside the allowed range",
                            FormattableString.Invariant($"{parsed.GetValue(count)}"),
                            FormattableString.Invariant($"1 to {PartsList.MostPieces:#,##0}")
                        )
                    );
                }

                ShopAction.Refuse(problems);
                SheetHeading today = new(Date: DateOnly.FromDateTime(desk.LocalNow.DateTime));
                Sheet sheet = await Progress
                    .ShowAsync(
                        desk,
                        "Forecasting",
                        () => desk.Use<PrintRecipePaper>().Parts(recipe, parts: null, chosen, parsed.GetValue(count), today, cancel),
                        cancel
                    )
                    .ConfigureAwait(false);
                return await options.WriteAsync(desk, parsed, sheet, cancel).ConfigureAwait(false);
            }
        );
        return command;
    }
}
