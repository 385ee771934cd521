using Microsoft.Playwright;

namespace Coilwright.Browser.Tests.Ground;

/// <summary>The coil entry page as a person uses it: by role and label, and by keyboard.</summary>
internal sealed class EntryPageDriver(IPage page, Guid batchId)
{
    public ILocator Resistance => page.GetByLabel("Resistance", new() { Exact = true });
    public ILocator Tag => page.GetByLabel("Tag", new() { Exact = true });
    public ILocator Verdict => page.GetByRole(AriaRole.Status);
    public ILocator Sent => page.GetByRole(AriaRole.List, new() { Name = "Entries from this page" });

    public async Task OpenAsync() => await page.GotoAsync($"/batches/{batchId}/enter");

    /// <summary>Types where the focus is and presses Enter.</summary>
    public async Task TypeAsync(string figure)
    {
        await page.Keyboard.TypeAsync(figure);
        await page.Keyboard.PressAsync("Enter");
    }

    /// <summary>Waits until nothing waits on the tablet.</summary>
    public async Task AllSavedAsync(float timeoutMs = 240_000)
    {
        await Assertions.Expect(Sent).Not.ToContainTextAsync("on this tablet", new() { Timeout = timeoutMs });
        await Assertions.Expect(Sent).Not.ToContainTextAsync("sending", new() { Timeout = timeoutMs });
    }

    /// <summary>Tag and typed figure of every coil in the batch's table.</summary>
    public async Task<IReadOnlyList<(string Tag, string Typed)>> TableAsync()
    {
        await page.GotoAsync($"/batches/{batchId}?all=yes");
        IReadOnlyList<string> rows = await page.GetByRole(AriaRole.Table, new() { Name = "Coils, newest first" })
            .GetByRole(AriaRole.Row)
            .AllInnerTextsAsync();
        return [.. rows.Skip(1).Select(row => row.Split('\t')).Select(cells => (cells[0].Trim(), cells[3].Split(" at ")[0].Trim()))];
    }
}
