using System.CommandLine;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;

namespace Coilwright.Commands;

/// <summary>coilwright machine list, keep, test: the shop's winders.</summary>
public static class MachineCommand
{
    public static Command Build(CommandContext desk) =>
        new("machine", "The shop's winders") { BuildList(desk), BuildKeep(desk), BuildTest(desk) };

    private static Command BuildList(CommandContext desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("list", "Every winder as it is now") { shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                Table table = new("machine", "what it is");
                foreach (Machine machine in await open.Services.Machines.ListAsync(cancel).ConfigureAwait(false))
                {
                    table.Add(machine.Name, MachineService.Words(machine));
                }

                table.Write(desk.Output, "");
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static Command BuildKeep(CommandContext desk)
    {
        Argument<string> file = new("FILE") { Description = "A machine file (coilwright.machine/1)" };
        EntryOptions entry = new();
        Command command = new("keep", "Keeps a winder; one of the same name is superseded") { file };
        entry.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await entry.OpenOrCreateAsync(parsed, desk, cancel).ConfigureAwait(false);
                string path = parsed.GetRequiredValue(file),
                    json = await InputFile.ReadAsync(path, cancel).ConfigureAwait(false);
                Refuse(
                    path,
                    await open.Services.Machines.KeepAsync(Guid.NewGuid(), json, entry.Person(parsed), cancel).ConfigureAwait(false)
                );
                Machine machine = MachineReader.ReadFile(json).OrRefuse(path);
                await desk.Output.WriteLineAsync($"{machine.Name}: {MachineService.Words(machine)}").ConfigureAwait(false);
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static Command BuildTest(CommandContext desk)
    {
        Argument<string> name = new("NAME") { Description = "Name of the winder" };
        Option<string> turns = new("--turns") { Description = "Real turns by the mark on the spindle, for example 100.6", Required = true };
        Option<string> counted = new("--counted") { Description = "What the counter ran on by, for example 100", Required = true };
        EntryOptions entry = new();
        Command command = new("test", "Records a marked test of the counter") { name, turns, counted };
        entry.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await entry.OpenAsync(parsed, desk, cancel).ConfigureAwait(false);
                Machine machine = await open.FindMachineAsync(parsed.GetRequiredValue(name), cancel).ConfigureAwait(false);
                Refuse(
                    "",
                    await open
                        .Services.Machines.KeepTestAsync(
                            Guid.NewGuid(),
                            machine.Name,
                            parsed.GetRequiredValue(turns),
                            parsed.GetRequiredValue(counted),
                            entry.Person(parsed),
                            cancel
                        )
                        .ConfigureAwait(false)
                );
                await desk
                    .Output.WriteLineAsync(
                        $"{machine.Name}: {MachineService.Words(await open.FindMachineAsync(machine.Name, cancel).ConfigureAwait(false))}"
                    )
                    .ConfigureAwait(false);
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static void Refuse(string source, IReadOnlyList<Problem> problems)
    {
        if (problems.Count > 0)
        {
            throw new WrongInputException(source, problems);
        }
    }
}
