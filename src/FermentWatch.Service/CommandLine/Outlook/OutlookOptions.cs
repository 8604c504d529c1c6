using System.CommandLine;
using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>The options of <c>outlook</c>.</summary>
internal sealed class OutlookOptions
{
    private readonly Command _verb;
    private readonly Option<string[]> _produce, _moves, _readings, _titrations, _until;
    private readonly Option<string> _cut, _salt, _water, _seasonings, _starter, _vinegar, _vessel, _temperature, _temperatures, _packed;
    private readonly Option<string> _days, _every, _members, _seed, _target, _ready;

    public OutlookOptions(Command verb)
    {
        _verb = verb;
        _produce = Several("--produce", "NAME[=MASS]",
            $"A vegetable, with its mass where there are several, such as cabbage=2kg. Known: {string.Join(", ", Vegetable.All)}.");
        _cut = One("--cut", "CUT", $"{string.Join(", ", Enum.GetNames<Cut>())}; the usual one without it.");
        _salt = One("--salt", "PERCENT", "Salt, per cent of vegetables and added water together, such as 2.25%, or 'by taste'.");
        _water = One("--water", "AMOUNT", "Water added, as such or in brine, such as 500g or 1qt.");
        _seasonings = One("--seasonings", "MASS", "Garlic, ginger and the like, at most a twentieth of the vegetables.");
        _starter = One("--starter", "MASS=ACIDITY", "Brine of an earlier jar with its acidity in per cent lactic, such as 100g=0.9%.");
        _vinegar = One("--vinegar", "MASS=STRENGTH", "Vinegar with its acetic acid, such as 60g=5%.");
        _vessel = One("--vessel", "VOLUME", "Size of the vessel, such as 1l, 1qt or 5gal; taken from what went in without it.");
        _temperature = One("--temperature", "TEMPERATURE", "One temperature of the room for all days, such as 18C or 64F.");
        _temperatures = One("--temperatures", "FILE.csv",
            "Temperatures of the room: a header 'day,temperature_c' or 'time,temperature_c' (or temperature_f), then a line each. After its last "
            + "day that day repeats.");
        _packed = One("--packed", "TIME", "When the jar was packed, for a file with times; the first time of the file without it.");
        _moves = Several("--move", "DAY=TEMPERATURE", "A planned move to somewhere else, such as 10=4C.");
        _readings = Several("--reading", "DAY=PH:METHOD", "A pH that was measured by meter, probe or strip, such as 3=4.2:meter.");
        _titrations = Several("--titration", "DAY=PERCENT", "An acidity that was titrated, per cent lactic, such as 10=1.2%.");
        _days = One("--days", "DAYS", "How far to look; 30 without it.");
        _every = One("--every", "DAYS", "Step of the rows; 1 without it.");
        _members = One("--members", "COUNT", "Members of the ensemble, 16 to 65536; 256 without it.");
        _seed = One("--seed", "NUMBER", "Key of the random numbers: the same key gives the same figures; 1 without it.");
        _until = Several("--until", "LEVEL",
            "Prints the day as p10, p50, p90, empty where not reached: ph=4.6, acidity=1.5, sourness=60. With --csv these days stand in place of "
            + "the course.");
        _target = One("--target", "LEVEL", "How sour it should be: 'a little sour', sour, 'very sour', or a level as for --until.");
        _ready = One("--ready", "DATE", "With --target: says when to pack at the latest for it to be ready on that date, such as 2026-12-24.");
    }

    public OutlookInput Input(ParseResult call) => new()
    {
        Produce = call.GetValue(_produce) ?? [], Cut = call.GetValue(_cut), Salt = call.GetValue(_salt), Water = call.GetValue(_water),
        Seasonings = call.GetValue(_seasonings), Starter = call.GetValue(_starter), Vinegar = call.GetValue(_vinegar),
            Vessel = call.GetValue(_vessel),
        Temperature = call.GetValue(_temperature), Temperatures = call.GetValue(_temperatures), Packed = call.GetValue(_packed),
        Moves = call.GetValue(_moves) ?? [], Readings = call.GetValue(_readings) ?? [], Titrations = call.GetValue(_titrations) ?? [],
            Days = call.GetValue(_days), Every = call.GetValue(_every),
        Members = call.GetValue(_members), Seed = call.GetValue(_seed), Until = call.GetValue(_until) ?? [], Target = call.GetValue(_target),
            Ready = call.GetValue(_ready),
    };

    private Option<string> One(string name, string helpName, string description) => Added(new Option<string>(name), helpName, description);

    private Option<string[]> Several(string name, string helpName, string description) => Added(new Option<string[]>(name), helpName, description);

    private Option<T> Added<T>(Option<T> option, string helpName, string description)
    {
        option.HelpName = helpName;
        option.Description = description;
        _verb.Add(option);
        return option;
    }
}
