using System.CommandLine;
using Coilwright.Formats.Records;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Commands;

/// <summary>coilwright set propose, make, leave, list, show: pieces matched by output and polarity.</summary>
public static class SetCommand
{
    public static Command Build(CommandContext desk) =>
        new("set", "Sets of two to four pieces, matched for output and polarity")
        {
            Propose(desk),
            Make(desk),
            Leave(desk),
            List(desk),
            Show(desk),
        };

    private static Option<string[]> Places(string of) =>
        new("--place")
        {
            Description = $"A place: \"bridge: {of} +1.5 dB\"; repeated, two to four",
            AllowMultipleArgumentsPerToken = false,
        };

    private static Command Propose(CommandContext desk)
    {
        Option<string[]> places = Places("Harbour bridge");
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("propose", "The closest sets of the pieces at hand, ranked, with the reasons") { places, shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                SetProposal found = await open
                    .Services.Pieces.Sets.ProposeAsync(Read(parsed.GetValue(places)), cancel)
                    .ConfigureAwait(false);
                ShopAction.Refuse(found.Problems);
                SetFormatter.WriteProposal(desk.Output, found);
                return found.Choices.Count > 0 ? ExitCode.Done : ExitCode.AnswerIsNo;
            }
        );
        return command;
    }

    private static Command Make(CommandContext desk)
    {
        Argument<string> name = new("NAME") { Description = "What the shop calls the set" };
        Option<string[]> places = Places("2610-001");
        Option<string> why = ShopAction.Text("--why", "Why these, where closer ones are at hand or two work against each other");
        return ShopAction.Build(
            desk,
            "make",
            "Matches pieces to a set; the others stay in stock",
            [name, places, why],
            async (open, parsed, person, cancel) =>
            {
                SetEntry entry = new()
                {
                    Id = Guid.NewGuid(),
                    Name = parsed.GetRequiredValue(name),
                    Places = Read(parsed.GetValue(places)),
                    Why = parsed.GetRequiredValue(why),
                    Person = person,
                };
                (IReadOnlyList<Problem> problems, SetChoice? choice) = await open
                    .Services.Pieces.Sets.JoinAsync(entry, cancel)
                    .ConfigureAwait(false);
                return (
                    problems,
                    choice is null
                        ? ""
                        : CautionFormatter.Below(
                            $"Set {entry.Name.Trim()}: {choice.Names}, {choice.ApartWords} apart; {choice.Phase.Words}",
                            Cautions.For(Job.Handling)
                        )
                );
            }
        );
    }

    private static Command Leave(CommandContext desk)
    {
        Argument<string> serials = ShopAction.Serials();
        Option<string> reason = new("--reason") { Description = "Why", Required = true };
        return ShopAction.Build(
            desk,
            "leave",
            "Takes pieces out of their set; a set with one piece left is none any more",
            [serials, reason],
            async (open, parsed, person, cancel) =>
                (
                    await open
                        .Services.Pieces.Sets.LeaveAsync(
                            Guid.NewGuid(),
                            ShopAction.List(parsed.GetRequiredValue(serials)),
                            parsed.GetRequiredValue(reason),
                            person,
                            cancel
                        )
                        .ConfigureAwait(false),
                    $"Out of their set: {parsed.GetRequiredValue(serials)}"
                )
        );
    }

    private static Command List(CommandContext desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("list", "The sets with a piece in the shop") { shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                SetsInShop found = await open.Services.Pieces.Sets.InShopAsync(cancel).ConfigureAwait(false);
                await UnreadableFormatter.WriteAsync(desk.Error, found.Unreadable).ConfigureAwait(false);
                string lines = string.Join(Environment.NewLine, found.Sets.Select(SetFormatter.Line));
                await desk.Output.WriteLineAsync(lines.Length > 0 ? lines : "No piece in the shop stands in a set.").ConfigureAwait(false);
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static Command Show(CommandContext desk)
    {
        Argument<string> name = new("NAME") { Description = "The set" };
        Option<bool> json = ShopOptions.Json();
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("show", "A set with its levels, and phase and hum of every position of the switch") { name, json, shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                PieceSet set = await open.Services.Pieces.Sets.FindAsync(parsed.GetRequiredValue(name), cancel).ConfigureAwait(false)
                    ?? throw WrongInputException.About("NAME", $"there is no set \"{parsed.GetRequiredValue(name)}\" in this shop");
                SetChoice choice = await open.Services.Pieces.Sets.ChoiceAsync(set, cancel).ConfigureAwait(false);
                if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(SetJson.Write(set, choice)).ConfigureAwait(false);
                }
                else
                {
                    await desk.Output.WriteLineAsync(SetFormatter.Line(set)).ConfigureAwait(false);
                    SetFormatter.WriteChoice(desk.Output, choice);
                }

                return ExitCode.Done;
            }
        );
        return command;
    }

    private static SetPlace[] Read(string[]? typed) => [.. (typed ?? []).Select(SetPlaceReader.Line)];
}
