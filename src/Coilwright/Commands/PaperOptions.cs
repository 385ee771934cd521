using System.CommandLine;
using Coilwright.Input;
using Coilwright.Papers.Pdf;
using Coilwright.Papers.Sheets;

namespace Coilwright.Commands;

/// <summary>What every paper is asked for with, and how it is handed over.</summary>
internal sealed class PaperOptions
{
    public Argument<string> Recipe { get; } = new("RECIPE") { Description = "A recipe file (coilwright.recipe/1); - reads standard input" };
    public Option<string?> Pdf { get; } = new("--pdf") { Description = "Write a PDF to this file", HelpName = "FILE" };
    public Option<bool> Html { get; } = new("--html") { Description = "Write the sheet for the screen" };
    public Option<string> Size { get; } = new("--size") { Description = "Paper of the PDF: A4 or Letter", DefaultValueFactory = _ => "A4" };

    public PaperSize Paper(ParseResult parsed) =>
        string.Equals(parsed.GetValue(Size), "Letter", StringComparison.OrdinalIgnoreCase) ? PaperSize.Letter : PaperSize.A4;

    /// <exception cref="WrongInputException">Neither or both forms, or no such paper.</exception>
    public void Check(ParseResult parsed)
    {
        OptionReader typed = new();
        if (string.IsNullOrWhiteSpace(parsed.GetValue(Pdf)) == !AsHtml(parsed))
        {
            typed.Add("--pdf", "say where the PDF goes, or --html where there is one; not both");
        }

        if (
            parsed.GetValue(Size) is { } size
            && !size.Equals("A4", StringComparison.OrdinalIgnoreCase)
            && !size.Equals("Letter", StringComparison.OrdinalIgnoreCase)
        )
        {
            typed.Add("--size", "there is no such paper here", size, "A4, Letter");
        }

        typed.RefuseIfWrong();
    }

    public async Task<int> WriteAsync(CommandContext desk, ParseResult parsed, Sheet sheet, CancellationToken cancel)
    {
        if (AsHtml(parsed))
        {
            await desk.Output.WriteLineAsync(SheetHtmlWriter.Render([sheet])).ConfigureAwait(false);
            return ExitCode.Done;
        }

        return await WriteAsync(desk, parsed, SheetPdf.Render([sheet], Paper(parsed)), cancel).ConfigureAwait(false);
    }

    public async Task<int> WriteAsync(CommandContext desk, ParseResult parsed, byte[] pdf, CancellationToken cancel)
    {
        string path = parsed.GetValue(Pdf)!;
        try
        {
            await File.WriteAllBytesAsync(path, pdf, cancel).ConfigureAwait(false);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw WrongInputException.About("--pdf", $"{path} cannot be written: {failure.Message}");
        }

        await desk.Output.WriteLineAsync($"Written: {path}").ConfigureAwait(false);
        return ExitCode.Done;
    }

    private bool AsHtml(ParseResult parsed) => parsed.CommandResult.Command.Options.Contains(Html) && parsed.GetValue(Html);
}
