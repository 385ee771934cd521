using System.CommandLine;
using Coilwright.Application.Tracing;
using Coilwright.Formats.Records;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Commands;

/// <summary>
/// coilwright recall NAME: every piece and coil that holds of a spool, lot, batch, basket or mix, as a list, a table, or a letter. Exit 1
/// when nothing has that name.
/// </summary>
internal static class RecallCommand
{
    public static Command Build(CommandContext desk)
    {
        PaperOptions paper = new();
        Argument<string> name = new("NAME") { Description = "A spool, lot, batch, coil, winder, basket, mix of ink or recipe" };
        Option<string?> kind = new("--kind") { Description = "Which of several things of that name", HelpName = "KIND" },
            letter = new("--letter") { Description = "The letter to this customer in place of the list", HelpName = "CUSTOMER" },
            reason = new("--reason") { Description = "What is wrong, for the letter", HelpName = "TEXT" },
            ask = new("--ask") { Description = "What the customer is asked to do, for the letter", HelpName = "TEXT" },
            shop = ShopOptions.Shop();
        Option<bool> csv = new("--csv") { Description = "Write a table" };
        Command command = new("recall", "Everything that holds of something, to set aside, look at again or ask back")
        {
            name,
            kind,
            letter,
            reason,
            ask,
            csv,
            paper.Pdf,
            paper.Html,
            paper.Size,
            shop,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                RecallThing recall = open.Use<RecallThing>();
                IReadOnlyList<RecallList> found = await recall.FindAsync(parsed.GetRequiredValue(name), cancel).ConfigureAwait(false);
                if (found.Count == 0)
                {
                    await desk.Output.WriteLineAsync($"Nothing in this shop is called \"{parsed.GetValue(name)}\".").ConfigureAwait(false);
                    return ExitCode.AnswerIsNo;
                }

                RecallList list = Chosen(found, parsed.GetValue(kind));
                if (parsed.GetValue(letter) is { } customer)
                {
                    paper.Check(parsed);
                    Sheet sheet = await recall
                        .LetterAsync(list, customer, parsed.GetValue(reason) ?? "", parsed.GetValue(ask) ?? "", cancel)
                        .ConfigureAwait(false)
                        ?? throw WrongInputException.About(
                            "--letter",
                            $"{customer} has nothing of it",
                            string.Join(", ", list.Customers.Select(one => one.Customer.Reference))
                        );
                    return await paper.WriteAsync(desk, parsed, sheet, cancel).ConfigureAwait(false);
                }

                if (parsed.GetValue(paper.Pdf) is not null || parsed.GetValue(paper.Html))
                {
                    paper.Check(parsed);
                    Sheet sheet = await recall.ListAsync(list, cancel).ConfigureAwait(false);
                    return await paper.WriteAsync(desk, parsed, sheet, cancel).ConfigureAwait(false);
                }

                await desk.Output.WriteAsync(parsed.GetValue(csv) ? RecallCsv.Write(list) : Words(list)).ConfigureAwait(false);
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static RecallList Chosen(IReadOnlyList<RecallList> found, string? kind)
    {
        string kinds = string.Join(", ", found.Select(list => list.Of.Kind).Distinct(StringComparer.Ordinal));
        RecallList[] meant = [.. found.Where(list => kind is null || list.Of.Kind == kind)];
        return meant.Length switch
        {
            0 => throw WrongInputException.About("--kind", $"nothing of that name is a {kind}", kinds),
            1 => meant[0],
            _ => throw WrongInputException.About(
                "NAME",
                $"several things are called so: {string.Join("; ", meant.Select(list => list.Of.Words))}",
                kind is null ? "--kind " + kinds : "the batch before the tag"
            ),
        };
    }

    private static string Words(RecallList list)
    {
        Table table = new([.. RecallList.Columns]);
        foreach (IReadOnlyList<string> row in list.Rows)
        {
            table.Add([.. row]);
        }

        using StringWriter text = new(System.Globalization.CultureInfo.InvariantCulture);
        text.WriteLine($"{list.Of.Name}, {list.Of.Words}: pieces {list.Of.Pieces.Count}, coils in no piece {list.Of.Loose.Count}");
        table.Write(text);
        return text.ToString();
    }
}
