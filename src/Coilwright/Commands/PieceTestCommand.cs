using System.CommandLine;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Commands;

/// <summary>coilwright piece test SERIAL: the final test. Exit 1 when the piece does not pass.</summary>
internal static class PieceTestCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> serial = new("SERIAL") { Description = "The piece" };
        TestOptions options = new();
        Option<bool> golden = new("--golden") { Description = "Keep this piece as the shop's measure" };
        EntryOptions stored = new();
        Command command = new("test", "The final test: readings against the golden piece or the recipe") { serial, golden };
        stored.AddTo(command);
        options.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await stored.OpenAsync(parsed, desk, cancel).ConfigureAwait(false);
                TestEntry entry = options.Read(parsed, parsed.GetRequiredValue(serial), stored.Person(parsed)) with
                {
                    Golden = parsed.GetValue(golden),
                };
                (IReadOnlyList<Problem> problems, FinalTestVerdict? verdict) = await open
                    .Services.Pieces.Test.TestAsync(entry, cancel)
                    .ConfigureAwait(false);
                ShopAction.Refuse(problems);
                await desk.Output.WriteLineAsync($"{parsed.GetRequiredValue(serial)}: {verdict!.Verdict}").ConfigureAwait(false);
                foreach (TestOutcome outcome in verdict.Outcomes)
                {
                    await desk.Output.WriteLineAsync($"  {outcome.Words}").ConfigureAwait(false);
                }

                foreach (string line in CautionFormatter.Lines(Cautions.For(Job.Testing)))
                {
                    await desk.Output.WriteLineAsync(line).ConfigureAwait(false);
                }

                return verdict.Passes ? ExitCode.Done : ExitCode.AnswerIsNo;
            }
        );
        return command;
    }
}
