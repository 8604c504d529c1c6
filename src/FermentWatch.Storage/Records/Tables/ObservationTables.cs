using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Storage.Records.Conversions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>What was seen, measured, tasted and done: one table, told apart by kind.</summary>
internal sealed class ObservationTable : IEntityTypeConfiguration<Observation>
{
    public void Configure(EntityTypeBuilder<Observation> builder)
    {
        builder.ToTable("observation");
        builder.Property(observation => observation.Id).ValueGeneratedNever();
        builder.HasDiscriminator<string>("kind")
            .HasValue<Handling>("handling")
            .HasValue<JarOpened>("opened")
            .HasValue<Look>("look")
            .HasValue<PhMeasurement>("ph")
            .HasValue<PortionTaken>("portion")
            .HasValue<Sighting>("sighting")
            .HasValue<StageChange>("stage")
            .HasValue<Taste>("taste")
            .HasValue<Titration>("titration")
            // A kind that a later version knows is left out, and the rest is read.
            .IsComplete(false);
    }
}

/// <summary>The order in which observations were entered.</summary>
internal sealed class ObservationEntryTable : IEntityTypeConfiguration<ObservationEntry>
{
    public void Configure(EntityTypeBuilder<ObservationEntry> builder)
    {
        builder.ToTable("observation_entry");
        builder.HasKey(entry => entry.Seq);
        builder.HasOne(entry => entry.Observation).WithOne().HasForeignKey<ObservationEntry>(entry => entry.ObservationId);
    }
}

/// <summary>What only a pH has.</summary>
internal sealed class PhMeasurementTable : IEntityTypeConfiguration<PhMeasurement>
{
    public void Configure(EntityTypeBuilder<PhMeasurement> builder)
    {
        // By name: the science's own numbers may be put in another order.
        builder.Property(measurement => measurement.Method).HasConversion(new EnumNameConverter<PhMethod>(PhMethod.Strip));
    }
}

/// <summary>What only a sighting has.</summary>
internal sealed class SightingTable : IEntityTypeConfiguration<Sighting>
{
    public void Configure(EntityTypeBuilder<Sighting> builder)
    {
        builder.Property(sighting => sighting.Kind).HasColumnName("Sighted");
        // By name, as the role of an account is written.
        builder.Property(sighting => sighting.SeenAs).HasConversion<string>();
    }
}

/// <summary>What only a handling has.</summary>
internal sealed class HandlingTable : IEntityTypeConfiguration<Handling>
{
    public void Configure(EntityTypeBuilder<Handling> builder)
    {
        builder.Property(handling => handling.Kind).HasColumnName("Handled");
    }
}

/// <summary>What only a portion has; columns of the whole table, so that their names say what is measured.</summary>
internal sealed class PortionTakenTable : IEntityTypeConfiguration<PortionTaken>
{
    public void Configure(EntityTypeBuilder<PortionTaken> builder)
    {
        builder.Property(portion => portion.Fraction).HasColumnName("TakenFraction");
        builder.Property(portion => portion.Litres).HasColumnName("TakenLitres");
        builder.Property(portion => portion.Kilograms).HasColumnName("TakenKilograms");
    }
}

/// <summary>Pictures, one for each observation that has one.</summary>
internal sealed class PhotoTable : IEntityTypeConfiguration<Photo>
{
    public void Configure(EntityTypeBuilder<Photo> builder)
    {
        builder.ToTable("photo");
        builder.HasKey(photo => photo.ObservationId);
        builder.HasOne<Observation>().WithOne().HasForeignKey<Photo>(photo => photo.ObservationId);
    }
}
