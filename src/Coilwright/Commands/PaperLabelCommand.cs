using System.CommandLine;
using Coilwright.Application.Printing;
using Coilwright.Input;
using Coilwright.Papers.Labels;
using Coilwright.Workshop.Entry;

namespace Coilwright.Commands;

/// <summary>coilwright paper label KIND NAME: labels of the shop's things for a label printer, one a page.</summary>
internal static class PaperLabelCommand
{
    public static Command Build(CommandContext desk)
    {
        PaperOptions options = new();
        Argument<string> kind = new("KIND") { Description = string.Join(", ", PrintLabels.Kinds) },
            name = new("NAME") { Description = "The batch of the coils, the serial, the spool, or a serial in the box" };
        kind.AcceptOnlyFromAmong([.. PrintLabels.Kinds]);
        Option<string> size = new("--label")
        {
            Description = "Size of the label in mm, width x height, 20 to 150 each",
            HelpName = "SIZE",
            DefaultValueFactory = _ => LabelSize.Usual[0].Key,
        };
        Option<string> first = new("--first") { Description = "Number of the first coil", DefaultValueFactory = _ => "" },
            count = new("--count") { Description = "How many coils; all of the batch unless said", DefaultValueFactory = _ => "" };
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("label", "Labels for a label printer, one a page: coils of a batch, a piece, a spool, a box to ship")
        {
            kind,
            name,
            size,
            first,
            count,
            shop,
            options.Pdf,
            options.Html,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                options.Check(parsed);
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                LabelQuestion asked = new(
                    Kind: parsed.GetRequiredValue(kind),
                    Name: parsed.GetRequiredValue(name),
                    Size: parsed.GetRequiredValue(size),
                    First: parsed.GetRequiredValue(first),
                    Count: parsed.GetRequiredValue(count)
                );
                LabelOutcome printed = await open.Use<PrintLabels>().PrintAsync(asked, cancel).ConfigureAwait(false);
                return printed.Problems.Count > 0
                    ? throw new WrongInputException("", [.. printed.Problems.Select(Named)])
                    : await options.WriteAsync(desk, parsed, printed, cancel).ConfigureAwait(false);
            }
        );
        return command;
    }

    private static Problem Named(Problem problem) =>
        problem with
        {
            Field = problem.Field switch
            {
                "size" => "--label",
                "first" => "--first",
                "count" => "--count",
                _ => "NAME",
            },
        };
}
