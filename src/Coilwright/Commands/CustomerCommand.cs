using System.CommandLine;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Steps;

namespace Coilwright.Commands;

/// <summary>coilwright customer list, add, erase.</summary>
public static class CustomerCommand
{
    public static Command Build(CommandContext desk) =>
        new("customer", "Customers: a reference, and a name that can be erased") { List(desk), Add(desk), Erase(desk) };

    private static Command List(CommandContext desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("list", "Every customer") { shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                Table table = new("reference", "name", "since");
                foreach (CustomerRecord one in await open.Services.Records.Customers.AllAsync(cancel).ConfigureAwait(false))
                {
                    table.Add(
                        one.Reference,
                        one.ErasedUtc is null ? one.Name : "(erased)",
                        ShopTime.Words(one.TimeUtc, TimeZoneInfo.Local)
                    );
                }

                table.Write(desk.Output, "");
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static Command Add(CommandContext desk)
    {
        Argument<string> reference = new("REFERENCE") { Description = "What the shop's papers call it, not the name: K-031" };
        Option<string> name = ShopAction.Text("--name", "The name");
        return ShopAction.Build(desk, "add", "Enters a customer", [reference, name], async (open, parsed, _, cancel) =>
            (
                await open
                    .Services.Pieces.Customers.AddAsync(
                        Guid.NewGuid(),
                        parsed.GetRequiredValue(reference),
                        parsed.GetRequiredValue(name),
                        cancel
                    )
                    .ConfigureAwait(false),
                $"Customer {parsed.GetRequiredValue(reference)} entered."
            )
        );
    }

    private static Command Erase(CommandContext desk)
    {
        Argument<string> reference = new("REFERENCE") { Description = "The customer" };
        Option<bool> sure = new("--yes") { Description = "Sure: it cannot be brought back" };
        return ShopAction.Build(
            desk,
            "erase",
            "Erases a customer's name for good; reference and trace stay",
            [reference, sure],
            async (open, parsed, _, cancel) =>
            {
                string who = parsed.GetRequiredValue(reference);
                IReadOnlyList<Problem> problems = parsed.GetValue(sure)
                    ? await open.Services.Pieces.Customers.EraseAsync(who, cancel).ConfigureAwait(false)
                    :
                    [
                        new Problem(
                            "--yes",
                            $"the name of {who} is erased for good, in the file too, and cannot be brought back; the reference stays, "
                                + $"and every trace leads to it",
                            null,
                            "add --yes to do it"
                        ),
                    ];
                return (problems, $"The name of {who} is erased; what was shipped stays traceable by the reference.");
            }
        );
    }
}
