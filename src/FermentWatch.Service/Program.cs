var app = WebApplication.CreateBuilder(args).Build();
await app.RunAsync();
