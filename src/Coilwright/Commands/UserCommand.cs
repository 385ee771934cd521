using System.CommandLine;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.People;
using Coilwright.Workshop.Steps;

namespace Coilwright.Commands;

/// <summary>coilwright user list, add, role, password, pin, remove: who may sign in to the shop's pages.</summary>
public static class UserCommand
{
    public static Command Build(CommandContext desk) =>
        new("user", "Who may sign in to the shop's pages, and what they may do there")
        {
            List(desk),
            Add(desk),
            Role(desk),
            Password(desk),
            Remove(desk),
        };

    private static Argument<string> Name() => new("NAME") { Description = "The person, as records carry the name" };

    private static Argument<string> RoleWord() => new("ROLE") { Description = "What the person is: " + RoleRights.Words };

    private static Command List(CommandContext desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("list", "Everybody who may sign in") { shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                IReadOnlyList<AccountRecord> people = await open.Use<AccountService>().PeopleAsync(cancel).ConfigureAwait(false);
                if (people.Count == 0)
                {
                    await desk
                        .Output.WriteLineAsync(
                            "No accounts: the pages are open on this computer alone. The first is an owner's: "
                                + "coilwright user add NAME --role owner"
                        )
                        .ConfigureAwait(false);
                    return ExitCode.Done;
                }

                Table table = new("name", "role", "PIN", "since");
                foreach (AccountRecord one in people)
                {
                    string pin = one.PinHash.Length > 0 ? "set" : "";
                    table.Add(one.Name, RoleRights.Word(one.Role), pin, ShopTime.Words(one.SinceUtc, TimeZoneInfo.Local));
                }

                table.Write(desk.Output, "");
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static Command Add(CommandContext desk)
    {
        Argument<string> name = Name();
        Option<string> role = ShopAction.Text("--role", "What the person is: " + RoleRights.Words);
        return ShopAction.Build(
            desk,
            "add",
            "Makes an account; its password is asked, or read from standard input, or made up where that is empty",
            [name, role],
            async (open, parsed, by, cancel) =>
            {
                string who = parsed.GetRequiredValue(name);
                string typed = await TypedSecret
                    .ReadAsync(desk, $"Password of {who} (empty: one is made up): ", cancel)
                    .ConfigureAwait(false);
                InvitedOutcome outcome = await open.Use<AccountService>()
                    .InviteAsync(who, parsed.GetRequiredValue(role), typed, mustChange: false, by, cancel)
                    .ConfigureAwait(false);
                return (AsOptions(outcome.Problems), $"{who} may sign in.{Once(outcome)}");
            }
        );
    }

    private static Command Role(CommandContext desk)
    {
        Argument<string> name = Name(),
            role = RoleWord();
        return ShopAction.Build(desk, "role", "Gives a person another role", [name, role], async (open, parsed, by, cancel) =>
            (
                AsOptions(
                    await open.Use<AccountService>()
                        .ChangeRoleAsync(parsed.GetRequiredValue(name), parsed.GetRequiredValue(role), by, cancel)
                        .ConfigureAwait(false)
                ),
                $"{parsed.GetRequiredValue(name)} is {parsed.GetRequiredValue(role)} now, and signs in again."
            )
        );
    }

    private static Command Password(CommandContext desk)
    {
        Argument<string> name = Name();
        return ShopAction.Build(
            desk,
            "password",
            "Sets a person's password, an owner's too: whoever may write the shop's file may do this; every session of theirs is over",
            [name],
            async (open, parsed, by, cancel) =>
            {
                string who = parsed.GetRequiredValue(name);
                string typed = await TypedSecret
                    .ReadAsync(desk, $"New password of {who} (empty: one is made up): ", cancel)
                    .ConfigureAwait(false);
                InvitedOutcome outcome = await open.Use<AccountService>()
                    .SetPasswordAsync(who, typed, mustChange: false, by, cancel)
                    .ConfigureAwait(false);
                return (AsOptions(outcome.Problems), $"The password of {who} is set.{Once(outcome)}");
            }
        );
    }

    private static Command Remove(CommandContext desk)
    {
        Argument<string> name = Name();
        return ShopAction.Build(
            desk,
            "remove",
            "Ends an account; what the person did keeps the name",
            [name],
            async (open, parsed, by, cancel) =>
                (
                    AsOptions(
                        await open.Use<AccountService>().RemoveAsync(parsed.GetRequiredValue(name), by, cancel).ConfigureAwait(false)
                    ),
                    $"{parsed.GetRequiredValue(name)} may not sign in any more."
                )
        );
    }

    /// <summary>A password that was made up, told once.</summary>
    private static string Once(InvitedOutcome outcome) =>
        outcome.Password.Length > 0 ? $" The first password, shown this once: {outcome.Password}" : "";

    private static IReadOnlyList<Problem> AsOptions(IReadOnlyList<Problem> problems) =>
        [
            .. problems.Select(one =>
                one.Field switch
                {
                    "name" => one with { Field = "NAME" },
                    "role" => one with { Field = "--role" },
                    _ => one,
                }
            ),
        ];
}
