using System.CommandLine;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.People;
using Coilwright.Workshop.Steps;

namespace Coilwright.Commands;

/// <summary>coilwright token list, add, remove: keys for meters, counters and programs.</summary>
public static class TokenCommand
{
    public static Command Build(CommandContext desk) =>
        new("token", "Keys for meters, counters and programs that speak to the shop") { List(desk), Add(desk), Remove(desk) };

    private static Command List(CommandContext desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("list", "Tokens that are in force") { shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                Table table = new("name", "may do as", "ends", "made by");
                foreach (TokenRecord one in await open.Use<TokenService>().ListAsync(cancel).ConfigureAwait(false))
                {
                    string ends = one.UntilUtc is { } until ? ShopTime.Words(until, TimeZoneInfo.Local) : "by hand";
                    table.Add(one.Name, RoleRights.Word(one.Role), ends, one.Person);
                }

                table.Write(desk.Output, "");
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static Command Add(CommandContext desk)
    {
        Argument<string> name = new("NAME") { Description = "What it is for: \"Bench 2 meter\"" };
        Option<string> role = new("--role")
        {
            Description = "What it may do: " + string.Join(", ", TokenService.Roles.Select(RoleRights.Word)),
            DefaultValueFactory = _ => RoleRights.Word(Workshop.People.Role.Instrument),
        };
        Option<string> days = ShopAction.Text("--days", "Days until it ends by itself; it ends by hand unless said");
        return ShopAction.Build(desk, "add", "Makes a token; its key is shown once", [name, role, days], async (open, parsed, by, cancel) =>
        {
            KeyOutcome outcome = await open.Use<TokenService>()
                .MakeAsync(parsed.GetRequiredValue(name), parsed.GetRequiredValue(role), parsed.GetRequiredValue(days), by, cancel)
                .ConfigureAwait(false);
            return (AsOptions(outcome.Problems), $"The key of {parsed.GetRequiredValue(name)}, shown this once: {outcome.Key}");
        });
    }

    private static Command Remove(CommandContext desk)
    {
        Argument<string> name = new("NAME") { Description = "The token" };
        return ShopAction.Build(desk, "remove", "Ends a token", [name], async (open, parsed, by, cancel) =>
            (
                AsOptions(await open.Use<TokenService>().EndAsync(parsed.GetRequiredValue(name), by, cancel).ConfigureAwait(false)),
                $"The token {parsed.GetRequiredValue(name)} opens nothing any more."
            )
        );
    }

    private static IReadOnlyList<Problem> AsOptions(IReadOnlyList<Problem> problems) =>
        [
            .. problems.Select(one =>
                one.Field switch
                {
                    "token-name" => one with { Field = "NAME" },
                    "token-role" => one with { Field = "--role" },
                    "token-days" => one with { Field = "--days" },
                    _ => one,
                }
            ),
        ];
}
