using Coilwright.Browser.Tests.Checks;
using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>
/// A shop that gets its accounts: the owner on the computer that serves it, a winder and a tester at one tablet, the office and an engineer
/// at others, and a recipe that is kept secret. By labels alone.
/// </summary>
public sealed class PeopleDayTests(Chromium chromium)
{
    private const string Own = "salt and rope ";

    /// <summary>Pages that only a shop with accounts has: they are walked here.</summary>
    internal static readonly string[] PagesOfAccounts = ["/sign-in", "/who", "/account", "/recipes/{id:guid}/secret"];

    [Fact]
    public async Task Four_roles_and_two_tablets_share_a_shop_with_a_secret_recipe()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync(),
            batch = await shop.BatchAsync(recipe, 3);
        IPage owner = await OwnerAsync(shop);
        string winder = await InviteAsync(owner, "Ebbe", "winder"),
            tester = await InviteAsync(owner, "Tjark", "tester"),
            office = await InviteAsync(owner, "Olga", "office"),
            engineer = await InviteAsync(owner, "Enno", "engineer");
        await EveryWidth.HoldsAsync(owner);
        await owner.GotoAsync($"/recipes/{recipe}?view=history");
        await owner.FollowAsync("Who may see this recipe");
        await EveryWidth.HoldsAsync(owner);
        await owner.SendAsync("Keep this recipe secret");
        await Expect(Title(owner)).ToContainTextAsync("a secret");

        IPage bench = await FirstSignInAsync(shop, "Tjark", tester, pin: "48151");
        await bench.GotoAsync("/test");
        await Expect(Title(bench)).Not.ToContainTextAsync("Sign in");
        await bench.GotoAsync("/who");
        await bench.SendAsync("Sign this browser out");
        await SignInAsync(bench, "Ebbe", winder);
        await SetPasswordAsync(bench, winder, "Ebbe");
        await SetPinAsync(bench, "62342");
        await WindsAsync(bench, recipe, batch);
        await SwitchAsync(bench, "Tjark, tester", "48151");
        await Expect(bench.GetByText("Tjark").First).ToBeVisibleAsync();

        IPage desk = await FirstSignInAsync(shop, "Olga", office, pin: "");
        await RefusedAsync(desk, $"/recipes/{recipe}", "A secret recipe");
        await desk.GotoAsync("/pieces");
        await Expect(Title(desk)).ToContainTextAsync("Pieces");
        IPage board = await FirstSignInAsync(shop, "Enno", engineer, pin: "");
        await board.GotoAsync($"/recipes/{recipe}");
        await Expect(Title(board)).ToContainTextAsync("Harbour bridge");
        await RefusedAsync(board, "/shop/people", "Not for this role");

        await owner.GotoAsync("/shop/people");
        await Expect(owner.Locator("main")).ToContainTextAsync("Ebbe saw what is set for");
        await owner.SendAsync("End this session: Tjark");
        await bench.GotoAsync("/");
        await Expect(Title(bench)).ToHaveTextAsync("Sign in");
        await owner.GotoAsync($"/batches/{batch}");
        await owner.FollowAsync("C-001");
        await Expect(owner.Locator("main")).ToContainTextAsync("Ebbe"); // nobody typed the name
    }

    /// <summary>Of a secret recipe a winder sees what must be set; a coil is entered without a name, and bears the account's.</summary>
    private static async Task WindsAsync(IPage bench, Guid recipe, Guid batch)
    {
        await bench.GotoAsync($"/batches/{batch}/wind");
        await Expect(bench.Locator("#stop")).ToBeVisibleAsync();
        await RefusedAsync(bench, $"/recipes/{recipe}", "A secret recipe");
        await RefusedAsync(bench, $"/batches/{batch}", "A secret recipe");
        await RefusedAsync(bench, "/compare", "Not for this role");
        EntryPageDriver entry = new(bench, batch);
        await entry.OpenAsync();
        await Expect(bench.GetByLabel("Person")).ToBeHiddenAsync();
        await entry.Resistance.FillAsync("6.18k");
        await bench.Keyboard.PressAsync("Enter");
        await Expect(entry.Sent).ToContainTextAsync("C-001");
        await entry.AllSavedAsync();
    }

    private async Task<IPage> OwnerAsync(ServedShop shop)
    {
        IPage owner = await chromium.PageAsync(shop.Url);
        await owner.GotoAsync("/sign-in");
        await Expect(owner.Locator("main")).ToContainTextAsync("This shop has no accounts");
        await owner.GotoAsync("/shop/people");
        await EveryWidth.HoldsAsync(owner);
        await owner.GetByLabel("Name of the owner").FillAsync("Runa");
        await owner.GetByLabel("Password").FillAsync(Own + "Runa");
        await owner.SendAsync("Make the first account");
        await Expect(owner.GetByRole(AriaRole.Region, new() { Name = "People of the shop" })).ToContainTextAsync("Runa");
        return owner;
    }

    /// <summary>The password that is shown once.</summary>
    private static async Task<string> InviteAsync(IPage owner, string name, string role)
    {
        await owner.GetByLabel("Name", new() { Exact = true }).FillAsync(name);
        await owner.GetByLabel("Role", new() { Exact = true }).SelectOptionAsync(role);
        await owner.SendAsync("Invite");
        return await owner.GetByRole(AriaRole.Status, new() { Name = "To be told once" }).Locator("code").InnerTextAsync();
    }

    private async Task<IPage> FirstSignInAsync(ServedShop shop, string name, string password, string pin)
    {
        IPage page = await chromium.PageAsync(shop.Url, 810, 1080);
        await page.GotoAsync("/");
        await Expect(Title(page)).ToHaveTextAsync("Sign in");
        await EveryWidth.HoldsAsync(page);
        await SignInAsync(page, name, password);
        await SetPasswordAsync(page, password, name);
        if (pin.Length > 0)
        {
            await SetPinAsync(page, pin);
            await page.GotoAsync("/who");
            await EveryWidth.HoldsAsync(page);
        }

        return page;
    }

    private static async Task SignInAsync(IPage page, string name, string password)
    {
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync(name);
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(password);
        await page.SendAsync("Sign in");
        await Expect(Title(page)).ToHaveTextAsync("My account"); // a password that was made up is changed first
        await EveryWidth.HoldsAsync(page);
    }

    private static async Task SetPasswordAsync(IPage page, string old, string name)
    {
        await page.GetByLabel("Password until now").FillAsync(old);
        await page.GetByLabel("New password").FillAsync(Own + name);
        await page.SendAsync("Set the password");
        await Expect(page.Locator("main")).ToContainTextAsync("It is kept");
    }

    private static async Task SetPinAsync(IPage page, string pin)
    {
        await page.GotoAsync("/account");
        await page.GetByLabel("New PIN").FillAsync(pin);
        await page.SendAsync("Set the PIN");
        await Expect(page.Locator("main")).ToContainTextAsync("It is kept");
    }

    private static async Task SwitchAsync(IPage page, string person, string pin)
    {
        await page.GotoAsync("/who");
        await page.GetByLabel(person).CheckAsync();
        await page.GetByLabel("PIN", new() { Exact = true }).FillAsync(pin);
        await page.SendAsync("Go on as this person");
    }

    private static async Task RefusedAsync(IPage page, string address, string title)
    {
        await page.GotoAsync(address);
        await Expect(Title(page)).ToHaveTextAsync(title);
    }

    private static ILocator Title(IPage page) => page.GetByRole(AriaRole.Heading, new() { Level = 1 });
}
