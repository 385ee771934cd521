using System.CommandLine;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Returns;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Commands;

/// <summary>coilwright piece return, examine, close: the way back.</summary>
internal static class PieceReturnCommand
{
    public static Command Return(CommandContext desk)
    {
        Argument<string> serial = new("SERIAL") { Description = "The piece" };
        Option<string> complaint = new("--complaint") { Description = "What the customer says", Required = true };
        return ShopAction.Build(desk, "return", "Books a piece back in", [serial, complaint], async (open, parsed, person, cancel) =>
            (
                await open
                    .Services.Pieces.Returns.ReturnAsync(
                        Guid.NewGuid(),
                        parsed.GetRequiredValue(serial),
                        parsed.GetRequiredValue(complaint),
                        person,
                        cancel
                    )
                    .ConfigureAwait(false),
                await PieceCommand.StatusAsync(open, parsed.GetRequiredValue(serial), cancel).ConfigureAwait(false)
            )
        );
    }

    public static Command Examine(CommandContext desk)
    {
        Argument<string> serial = new("SERIAL") { Description = "The piece" };
        TestOptions options = new();
        Command command = ShopAction.Build(
            desk,
            "examine",
            "Measures a piece that came back, against itself at dispatch",
            [serial],
            async (open, parsed, person, cancel) =>
            {
                (IReadOnlyList<Problem> problems, ReturnFinding? finding) = await open
                    .Services.Pieces.Returns.ExamineAsync(options.Read(parsed, parsed.GetRequiredValue(serial), person), cancel)
                    .ConfigureAwait(false);
                return (
                    problems,
                    finding is null
                        ? ""
                        : CautionFormatter.Below(
                            string.Join(
                                Environment.NewLine,
                                finding
                                    .Lines.Select(line => $"{PieceEventFormatter.Quantity(line.Quantity)}: {line.Words}")
                                    .Append(finding.Cause)
                            ),
                            Cautions.For(Job.Testing)
                        )
                );
            }
        );
        options.AddTo(command);
        return command;
    }

    public static Command Close(CommandContext desk)
    {
        Argument<string> serial = new("SERIAL") { Description = "The piece" };
        Option<string> done = new("--done") { Description = "What was done, or why it is given up", Required = true };
        Option<string> cost = ShopAction.Text("--cost", "As the shop writes it, or \"warranty\""),
            answer = ShopAction.Text("--answer", "Text for the customer");
        Option<bool> scrap = new("--scrap") { Description = "Scrap the piece" };
        return ShopAction.Build(
            desk,
            "close",
            "Records what was done to a piece, what it cost, and the answer",
            [serial, done, cost, answer, scrap],
            async (open, parsed, person, cancel) =>
                (
                    await open
                        .Services.Pieces.Returns.CloseAsync(
                            Guid.NewGuid(),
                            parsed.GetRequiredValue(serial),
                            parsed.GetRequiredValue(done),
                            parsed.GetRequiredValue(cost),
                            parsed.GetRequiredValue(answer),
                            parsed.GetValue(scrap),
                            person,
                            cancel
                        )
                        .ConfigureAwait(false),
                    await PieceCommand.StatusAsync(open, parsed.GetRequiredValue(serial), cancel).ConfigureAwait(false)
                )
        );
    }
}
