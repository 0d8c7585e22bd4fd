using System;
using System.IO;
using System.Runtime.InteropServices;
using Xunit;

namespace Refrigerant.Recovery.CoolProp.Tests;

[Collection("native")]
public sealed class LibraryTests
{
    [Fact]
    public void Where_the_build_server_runs_on_linux_the_stand_in_is_there()
    {
        bool server = Environment.GetEnvironmentVariable("CI") == "true" && OperatingSystem.IsLinux();
        Assert.True(!server || StandIn.WhyMissing is null, StandIn.WhyMissing);
    }

    [StandInFact]
    public void Opens_a_library_and_reads_its_version()
    {
        CoolPropLibrary library = StandIn.Library;
        Assert.Equal("0.0-standin", library.Version);
        Assert.Equal(StandIn.Path, library.Location);
    }

    [Fact]
    public void Blank_paths_are_argument_errors()
    {
        Assert.Throws<ArgumentException>(() => CoolPropLibrary.Open(" "));
        Assert.Throws<ArgumentException>(() => CoolPropLibrary.Open(null!));
    }

    [Fact]
    public void A_missing_file_is_named_with_the_way_to_get_the_library()
    {
        string path = Path.Combine(Path.GetTempPath(), "no-such-folder", "libCoolProp.so");
        CoolPropUnavailableException error = Assert.Throws<CoolPropUnavailableException>(() => CoolPropLibrary.Open(path));
        Assert.Contains(path, error.Message, StringComparison.Ordinal);
        Assert.Contains("COOLPROP_LIBRARY", error.Message, StringComparison.Ordinal);
        Assert.Contains("coolprop.org", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_library_for_another_processor_is_told_as_such()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        const int ElfHeaderLength = 64;
        bool arm = RuntimeInformation.ProcessArchitecture == Architecture.Arm64;
        byte[] image = new byte[ElfHeaderLength * 2];
        new byte[] { 0x7f, (byte)'E', (byte)'L', (byte)'F', 2, 1, 1 }.CopyTo(image, 0);
        BitConverter.GetBytes((ushort)3).CopyTo(image, 16);
        BitConverter.GetBytes((ushort)(arm ? 62 : 183)).CopyTo(image, 18);
        WithFile(image, path =>
        {
            string message = Assert.Throws<CoolPropUnavailableException>(() => CoolPropLibrary.Open(path)).Message;
            Assert.Contains($"processor {(arm ? "x64" : "Arm64")}", message, StringComparison.Ordinal);
            Assert.Contains($"this {RuntimeInformation.ProcessArchitecture} process", message, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void A_windows_library_is_told_as_such()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        byte[] image = new byte[256];
        "MZ"u8.CopyTo(image);
        BitConverter.GetBytes(128).CopyTo(image, 0x3c);
        BitConverter.GetBytes((ushort)0x8664).CopyTo(image, 132);
        WithFile(image, path => Assert.Contains(
            "built for Windows (PE), processor x64",
            Assert.Throws<CoolPropUnavailableException>(() => CoolPropLibrary.Open(path)).Message,
            StringComparison.Ordinal));
    }

    [Fact]
    public void A_text_file_is_no_library() => WithFile("not a library, whatever its name says"u8.ToArray(), path => Assert.Contains(
        "no shared library", Assert.Throws<CoolPropUnavailableException>(() => CoolPropLibrary.Open(path)).Message, StringComparison.Ordinal));

    [StandInFact]
    public void A_library_that_lacks_a_function_is_too_old_and_the_function_is_named()
    {
        string message = Assert.Throws<CoolPropUnavailableException>(() => CoolPropLibrary.Open(StandIn.OldPath)).Message;
        Assert.Contains("too old", message, StringComparison.Ordinal);
        Assert.Contains("AbstractState_keyed_output_satState", message, StringComparison.Ordinal);
    }

    [StandInFact]
    public void A_library_without_any_of_the_functions_is_not_coolprop()
    {
        string message = Assert.Throws<CoolPropUnavailableException>(() => CoolPropLibrary.Open(StandIn.ForeignPath)).Message;
        Assert.Contains("is not CoolProp", message, StringComparison.Ordinal);
        Assert.Contains("AbstractState_factory", message, StringComparison.Ordinal);
    }

    [StandInFact]
    public void The_variable_names_the_library_and_nothing_else_is_tried_where_it_is_set()
    {
        WithVariable(StandIn.Path, () => Assert.Equal(StandIn.Path, CoolPropLibrary.Open().Location));
        WithVariable("/no/such/file", () =>
        {
            Assert.False(CoolPropLibrary.TryOpen(out CoolPropLibrary? library, out string? reason));
            Assert.Null(library);
            Assert.Contains("COOLPROP_LIBRARY is \"/no/such/file\"", reason, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Without_the_variable_the_systems_loader_is_asked_and_its_answer_reported() => WithVariable(null, () =>
    {
        if (!CoolPropLibrary.TryOpen(out CoolPropLibrary? library, out string? reason))
        {
            Assert.Contains("COOLPROP_LIBRARY is not set. The system's loader has no", reason, StringComparison.Ordinal);
            Assert.Contains("CoolProp", reason, StringComparison.Ordinal);
        }
        else
        {
            Assert.NotEmpty(library.Version);
        }
    });

    [StandInFact]
    public void A_c_long_of_32_bits_as_on_windows_is_passed_and_returned_as_such()
    {
        var fluid = CoolPropFluid.Load("R901", CoolPropLibrary.Open(StandIn.Long32Path, longIs32Bits: true));
        Assert.Equal(3e5, fluid.Model.SaturationAtTemperature(StandIn.T0).Bubble.Pressure, 1e-6);
        CoolPropException error = Assert.Throws<CoolPropException>(
            () => CoolPropFluid.Load("nothing", CoolPropLibrary.Open(StandIn.Long32Path, longIs32Bits: true)));
        Assert.Contains("key [nothing] was not found", error.NativeMessage, StringComparison.Ordinal);
    }

    [StandInFact]
    public void A_c_long_of_64_bits_keeps_its_upper_half()
    {
        // The stand-in's handles start above 32 bits: a binding that cut them would find no state.
        Assert.Equal(3e5, CoolPropFluid.Load("R901", StandIn.Library).Model.SaturationAtTemperature(StandIn.T0).Bubble.Pressure, 1e-6);
    }

    private static void WithFile(byte[] content, Action<string> test)
    {
        string path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        File.WriteAllBytes(path, content);
        try
        {
            test(path);
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static void WithVariable(string? value, Action test)
    {
        string? before = Environment.GetEnvironmentVariable(CoolPropLibrary.PathVariable);
        Environment.SetEnvironmentVariable(CoolPropLibrary.PathVariable, value);
        try
        {
            test();
        }
        finally
        {
            Environment.SetEnvironmentVariable(CoolPropLibrary.PathVariable, before);
        }
    }
}
