using System.Text.Json;
using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>Plots of field, output and branch on the recipe page, and that they follow a slider.</summary>
public sealed class LivePlotsTests(Chromium chromium)
{
    private const string StepByStep = """
        async () => {
          const slider = document.querySelector('input[type=range][data-drives*="turns"]');
          const panel = document.querySelector('#forecast [data-part=view]');
          const shown = [];
          for (let i = 0; i < 24; i++) {
            const drawn = new Promise(done =>
              new MutationObserver((_, self) => { self.disconnect(); done(); }).observe(panel, { childList: true }));
            slider.value = String(6000 + 50 * i);
            slider.dispatchEvent(new Event('input', { bubbles: true }));
            await drawn;
            shown.push(document.querySelector('[data-part=answers]').textContent);
          }
          return shown;
        }
        """;

    [Fact]
    public async Task Numbers_and_plots_are_drawn_anew_at_every_step_of_a_slider()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.OpenAsync($"/recipes/{recipe}");
        JsonElement[] shown = [.. (await page.EvaluateAsync<JsonElement>(StepByStep)).EnumerateArray()];
        Assert.Equal(24, shown.Length);
        Assert.Equal(24, shown.Select(one => one.GetString()).Distinct().Count()); // 50 turns more each: no two alike
    }

    [Fact]
    public async Task Field_output_and_branch_are_drawn_named_and_told_as_tables_and_move_with_the_form()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        foreach (
            (string view, string name) in new[]
            {
                ("numbers", "Inductance against frequency"),
                ("numbers", "AC resistance against frequency"),
                ("strings", "Field at the strings"),
                ("strings", "What is heard along the string"),
                ("strings", "Output of the strings"),
            }
        )
        {
            await page.OpenAsync($"/recipes/{recipe}?view={view}");
            ILocator heading = page.Locator("summary").Filter(new() { HasText = name });
            if (name != "Output of the strings") // that one stands open
            {
                await heading.ClickAsync();
            }

            ILocator figure = page.Locator("figure", new() { Has = page.GetByRole(AriaRole.Img, new() { Name = name }) });
            await Expect(figure).ToHaveCountAsync(1);
            await Expect(figure.Locator("figcaption")).ToContainTextAsync("forecast");
            await figure.GetByText("The same in numbers").ClickAsync();
            await Expect(figure.GetByRole(AriaRole.Row).Nth(1)).ToBeVisibleAsync();
        }

        ILocator output = page.GetByRole(AriaRole.Img, new() { Name = "Output of the strings" });
        string bar = await output.Locator("rect.bar").First.GetAttributeAsync("height") ?? "",
            first = await page.Locator("figure", new() { Has = output }).GetByRole(AriaRole.Row).Nth(1).InnerTextAsync();
        await page.GetByRole(AriaRole.Slider, new() { Name = "Turns, slider" }).FillAsync("4000");
        await Expect(page.GetByLabel("Turns", new() { Exact = true })).ToHaveValueAsync("4000");
        await Expect(page.Locator("figure", new() { Has = output }).GetByRole(AriaRole.Row).Nth(1)).Not.ToHaveTextAsync(first);
        await Expect(output.Locator("rect.bar").First).Not.ToHaveAttributeAsync("height", bar);
        // an open table stays open
        await Expect(page.Locator("figure", new() { Has = output }).GetByRole(AriaRole.Row).Nth(1)).ToBeVisibleAsync();
    }
}
