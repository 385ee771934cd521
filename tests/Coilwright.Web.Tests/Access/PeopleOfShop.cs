using Coilwright.Workshop.People;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Web.Tests.Access;

/// <summary>A served shop with one person of each role, each with a browser that is signed in.</summary>
internal sealed class PeopleOfShop : IAsyncDisposable
{
    public const string Password = "tar and feathers 7";

    private readonly ServedShop _shop;
    private readonly Dictionary<Role, HttpClient> _browsers = [];

    private PeopleOfShop(ServedShop shop) => _shop = shop;

    public ServedShop Shop => _shop;

    public T Use<T>()
        where T : notnull => _shop.Use<T>();

    public static string NameOf(Role role) => role + " of Lantern Quay";

    public static async Task<PeopleOfShop> StartAsync(TimeProvider? clock = null)
    {
#pragma warning disable CA2000 // closed with the people
        PeopleOfShop people = new(await ServedShop.StartAsync(clock));
#pragma warning restore CA2000
        foreach (Role role in RoleRights.OfPeople.Reverse()) // the owner first
        {
            InvitedOutcome made = await people
                .Use<AccountService>()
                .InviteAsync(NameOf(role), RoleRights.Word(role), Password, mustChange: false, "", TestContext.Current.CancellationToken);
            Assert.Empty(made.Problems);
        }

        return people;
    }

    /// <summary>A browser in which the person of this role is signed in.</summary>
    public async Task<HttpClient> AsAsync(Role role)
    {
        if (!_browsers.TryGetValue(role, out HttpClient? browser))
        {
            KeyOutcome signed = await Use<SignInService>()
                .SignInAsync(NameOf(role), Password, "test", TestContext.Current.CancellationToken);
            Assert.Empty(signed.Problems);
            browser = _browsers[role] = _shop.Browser(signed.Key);
        }

        return browser;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (HttpClient browser in _browsers.Values)
        {
            browser.Dispose();
        }

        await _shop.DisposeAsync();
    }
}
