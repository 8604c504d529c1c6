using FermentWatch.Intake.Door;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Sensors;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NodaTime;

namespace FermentWatch.Browser.Tests;

public sealed partial class PagePictureTests
{
    /// <summary>A notice of today's round; where the link in it leads.</summary>
    private static async Task<string> AskAsync(RunningKitchen kitchen)
    {
        Household household = await kitchen.Services.GetRequiredService<IHouseholdBook>().ReadAsync(CancellationToken.None);
        LocalDate today = kitchen.Now.InZone(household.Zone).Date;
        RoundSheet sheet = await kitchen.Services.GetRequiredService<RoundPass>().SheetAsync(household, today, CancellationToken.None);
        INoticeBook book = kitchen.Services.GetRequiredService<INoticeBook>();
        var notice = new Notice
        {
            Id = Guid.CreateVersion7(), Key = "picture", RouteId = (await book.RoutesAsync(CancellationToken.None))[0].Id, Person = "Ada",
                Title = "t", Body = "b",
            DueAt = kitchen.Now, ExpiresAt = kitchen.Now, NextAttemptAt = kitchen.Now,
        };
        await book.QueueAsync(RoundQuestion.Ask([notice], sheet, RoundCalendar.EndOf(today, household.Zone)), CancellationToken.None);
        return kitchen.Services.GetRequiredService<INoticeLinks>().Of(notice)[0].Path;
    }

    private static async Task FillAsync(IPage page, RunningKitchen kitchen)
    {
        await page.SetUpAsync(kitchen);
        var places = await kitchen.Services.GetRequiredService<IPlaceBook>().AllAsync(CancellationToken.None);
        await kitchen.AddSensorAsync("cellar-shelf", places.Single(place => place.Name == "cellar").Id, 14, day =>
            12.5 + (1.2 * Math.Sin(day * Math.Tau)) - (day * 0.05));
        await kitchen.AddSensorAsync("cellar-window", places.Single(place => place.Name == "cellar").Id, 2, day =>
            16.5 + (1.1 * Math.Sin(day * Math.Tau)));
        await AddProbeAsync(kitchen, places.Single(place => place.Name == "kitchen counter").Id);
        await HearUnknownAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "1.1 kg", "By taste", "kitchen counter");
        await page.PutUpAsync(kitchen, "carrot", "900 g", "2.5 %", "cellar", daysAgo: 12.4);
        await page.PutUpAsync(kitchen, "cabbage", "1.2 kg", "2.25 %", "kitchen counter", howMany: 3, daysAgo: 9);
        await page.MeasureAsync(kitchen, 2, "4.3", "Meter");
        await page.MeasureAsync(kitchen, 2, "4.2", "Meter", check: true);
        await page.MeasureAsync(kitchen, 3, "4.8", "Meter", check: true);
        await page.MeasureAsync(kitchen, 4, "3.9", "Strip", check: true);
        await page.GotoAsync(kitchen.Address + "/jars/4/taste");
        await page.GetByRole(AriaRole.Button, new() { Name = "Nearly" }).ClickAsync();
        await page.ReachAsync(kitchen, "Ada", "Webhook", "https://push.example.net/number-nine");
        await page.AddMemberAsync(kitchen, "Mira", child: false);
        await page.AddMemberAsync(kitchen, "Lena", child: true);
        await page.ReachAsync(kitchen, "Mira", "MQTT", "kitchen/notices/mira");
        await page.GotoAsync(kitchen.Address + "/jars/5/seen");
        await page.GetByRole(AriaRole.Button, new() { Name = "A flat white film" }).ClickAsync();
        await EndOneAsync(page, kitchen);
    }

    /// <summary>A jar that is over, and one that was put right.</summary>
    private static async Task EndOneAsync(IPage page, RunningKitchen kitchen)
    {
        await page.PutUpAsync(kitchen, "daikon", "700 g", "2.5 %", "cellar", daysAgo: 30);
        await page.GotoAsync(kitchen.Address + "/jars/6/on");
        await page.GetByLabel("Why it is thrown out").FillAsync("soft and slimy");
        await page.GetByRole(AriaRole.Button, new() { Name = "Thrown out" }).ClickAsync();
        await page.ArriveAnsweredAsync(kitchen, 6);
        await page.GotoAsync(kitchen.Address + "/jars/2/correct");
        await page.GetByLabel("Closed with").SelectOptionAsync("Tight");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put right" }).ClickAsync();
        await page.ArriveAnsweredAsync(kitchen, 2);
    }

    private static async Task AddProbeAsync(RunningKitchen kitchen, Guid counter)
    {
        Sensor probe = await kitchen.AddSensorAsync("brine-probe", counter, 1, _ => 19.5 + (0.1 * Math.Sin(_ * 50)));
        foreach ((int hours, double slope) in new[] { (170, 0.97), (20, 0.84) })
        {
            Instant at = kitchen.Now - Duration.FromHours(hours);
            BufferReading Point(ReferenceBuffer buffer) =>
                new(buffer, 4 - (slope * Nernst.MillivoltsPerPh(20) * (BufferTable.PhAt(buffer, 20) - 7)), 20);
            await kitchen.Services.GetRequiredService<IProbeBook>().AddAsync(
                new ProbeCheck { Id = Guid.CreateVersion7(), SensorId = probe.Id, At = at, EnteredAt = at, By = "Ada",
                Points = [Point(ReferenceBuffer.Technical7), Point(ReferenceBuffer.Phthalate4)] }, CancellationToken.None);
        }
        await kitchen.Services.GetRequiredService<IReadingIntake>().AppendAsync(
            [new Reading(probe.Key, Quantity.Millivolts, 148.2, kitchen.Now, kitchen.Now, TimeSource.Arrival)], CancellationToken.None);
        await kitchen.SettleAsync();
    }

    private static async Task HearUnknownAsync(RunningKitchen kitchen)
    {
        var door = kitchen.Services.GetRequiredService<MessageDoor>();
        foreach ((string topic, string payload) in new[] { ("hub/a4c138aabbcc/state", "{\"temperature\": 66.9, \"battery\": 88}"),
            ("garden/shed/probe/ph", "4.6") })
            await door.TakeAsync(new IncomingMessage("gateway", topic, System.Text.Encoding.UTF8.GetBytes(payload), kitchen.Now, null),
                CancellationToken.None);
    }
}
