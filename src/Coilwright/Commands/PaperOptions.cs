using System.CommandLine;
using Coilwright.Application.Printing;
using Coilwright.Input;
using Coilwright.Papers.Labels;
using Coilwright.Papers.Pdf;
using Coilwright.Papers.Sheets;

namespace Coilwright.Commands;

/// <summary>What every paper is asked for with, and how it is handed over.</summary>
internal sealed class PaperOptions
{
    public Argument<string> Recipe { get; } = new("RECIPE") { Description = "A recipe file (coilwright.recipe/1); - reads standard input" };
    public Option<string?> Pdf { get; } = new("--pdf") { Description = "Write a PDF to this file", HelpName = "FILE" };
    public Option<bool> Html { get; } = new("--html") { Description = "Write the sheet for the screen" };
    public Option<string> Size { get; } = SizeOption();

    public static Option<string> SizeOption() =>
        new("--size") { Description = "Paper of the PDF: A4 or Letter", DefaultValueFactory = _ => "A4" };

    public static PaperSize PaperOf(string? size) =>
        string.Equals(size, "Letter", StringComparison.OrdinalIgnoreCase) ? PaperSize.Letter : PaperSize.A4;

    public static void CheckSize(OptionReader typed, string? size)
    {
        if (
            size is not null
            && !size.Equals("A4", StringComparison.OrdinalIgnoreCase)
            && !size.Equals("Letter", StringComparison.OrdinalIgnoreCase)
        )
        {
            typed.Add("--size", "there is no such paper here", size, "A4, Letter");
        }
    }

    public PaperSize Paper(ParseResult parsed) => PaperOf(parsed.GetValue(Size));

    /// <exception cref="WrongInputException">Neither or both forms, or no such paper.</exception>
    public void Check(ParseResult parsed)
    {
        OptionReader typed = new();
        if (string.IsNullOrWhiteSpace(parsed.GetValue(Pdf)) == !AsHtml(parsed))
        {
            typed.Add("--pdf", "say where the PDF goes, or --html where there is one; not both");
        }

        CheckSize(typed, parsed.GetValue(Size));
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

    public async Task<int> WriteAsync(CommandContext desk, ParseResult parsed, LabelOutcome printed, CancellationToken cancel)
    {
        if (AsHtml(parsed))
        {
            await desk.Output.WriteLineAsync(PrinterLabelSvg.Document(printed.Labels, printed.Size)).ConfigureAwait(false);
            return ExitCode.Done;
        }

        return await WriteAsync(desk, parsed, PrinterLabelPdf.Render(printed.Labels, printed.Size), cancel).ConfigureAwait(false);
    }

    public async Task<int> WriteAsync(CommandContext desk, ParseResult parsed, byte[] pdf, CancellationToken cancel)
    {
        await WriteFileAsync(desk, parsed.GetValue(Pdf)!, pdf, cancel).ConfigureAwait(false);
        return ExitCode.Done;
    }

    /// <exception cref="WrongInputException">The file cannot be written.</exception>
    public static async Task WriteFileAsync(CommandContext desk, string path, byte[] pdf, CancellationToken cancel)
    {
        try
        {
            await File.WriteAllBytesAsync(path, pdf, cancel).ConfigureAwait(false);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw WrongInputException.About("--pdf", $"{path} cannot be written: {failure.Message}");
        }

        await desk.Output.WriteLineAsync($"Written: {path}").ConfigureAwait(false);
    }

    private bool AsHtml(ParseResult parsed) => parsed.CommandResult.Command.Options.Contains(Html) && parsed.GetValue(Html);
}
