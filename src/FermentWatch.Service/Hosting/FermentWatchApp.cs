namespace FermentWatch.Service.Hosting;

/// <summary>The product's composition root, with the clock as its only outside choice.</summary>
public static class FermentWatchApp
{
    /// <summary>Builds the service, not yet started.</summary>
    /// <param name="configuration">Settings, already gathered from file, environment and secret files.</param>
    /// <param name="clock">The only clock.</param>
    public static WebApplication Build(IConfiguration configuration, TimeProvider clock)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Configuration.AddConfiguration(configuration);
        builder.Services.AddSingleton(clock);
        return builder.Build();
    }
}
