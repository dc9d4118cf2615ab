using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Thoubook.Browser.Tests.Chromium))]

namespace Thoubook.Browser.Tests;

/// <summary>The Chromium of this machine, without a window. Nothing is downloaded.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private IPlaywright? _playwright;

    public IBrowser Browser { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        _playwright = await Playwright.CreateAsync();
        Browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Environment.GetEnvironmentVariable("CHROMIUM") ?? "/usr/bin/chromium",
            Args = ["--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage"],
        });
    }

    public async Task<IPage> Page(Uri address, int width, int height = 800, bool script = true, bool touch = false, bool dark = false)
    {
        var context = await Browser.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = address.ToString(),
            ViewportSize = new ViewportSize { Width = width, Height = height },
            JavaScriptEnabled = script,
            HasTouch = touch,
            IsMobile = touch,
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
        });
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(20_000);
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        await Browser.DisposeAsync();
        _playwright?.Dispose();
    }
}
