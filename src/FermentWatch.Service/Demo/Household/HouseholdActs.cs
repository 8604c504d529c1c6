using FermentWatch.Acts.Households;
using FermentWatch.Acts.Jars;
using FermentWatch.Acts.Members;
using FermentWatch.Acts.Rounds;
using FermentWatch.Acts.Sensors;

namespace FermentWatch.Service.Demo.Household;

/// <summary>What the invented household does: the same acts as anybody's.</summary>
internal sealed record HouseholdActs(
    DescribeHousehold Household, DescribePlace Place, ManageMembers Members, AdmitGear Gear, GiveSensor Sensor, RoundReader Rounds,
    PutUpJars PutUp, SayAllWell AllWell, ReportSeen Seen, SettleTrouble Settle, ReportTaste Taste, MeasurePh Measure, ChangeStage Stage,
        MoveJar Move, TakePortion Take);
