using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace Refrigerant.Recovery.Mutation;

/// <summary>A copy of the library's sources with mutants in it, and its build.</summary>
internal sealed partial class MutatedLibrary
{
    private const string Library = "Refrigerant.Recovery", Framework = "net8.0";

    private static readonly CSharpParseOptions Parse = new(
        LanguageVersion.Latest, DocumentationMode.None, preprocessorSymbols: ["NET", "NETCOREAPP", "NET8_0", "NET8_0_OR_GREATER", "NET7_0_OR_GREATER", "NET6_0_OR_GREATER"]);

    private readonly HashSet<(string File, string Name)> _notConstant = [];
    private readonly string _source;
    private readonly string _copy;

    /// <param name="repository">Root of the repository.</param>
    /// <param name="folder">Where the copy goes.</param>
    public MutatedLibrary(string repository, string folder)
    {
        _source = Path.Combine(repository, "src");
        _copy = Path.Combine(folder, "src");
    }

    /// <summary>The library that was built.</summary>
    public string Assembly => Path.Combine(_copy, Library, "bin", "Release", Framework, Library + ".dll");

    /// <summary>All mutants of a layer, in the order of the files.</summary>
    public IReadOnlyList<Mutant> Find(string layer)
    {
        var all = new List<Mutant>();
        string folder = Path.Combine(_source, Library, layer.Replace('.', Path.DirectorySeparatorChar));
        foreach (string file in Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            var finder = new MutantFinder();
            finder.Visit(CSharpSyntaxTree.ParseText(File.ReadAllText(file), Parse, file).GetRoot());
            finder.Found.ForEach(m => m.File = Path.GetRelativePath(Path.Combine(_source, Library), file));
            all.AddRange(finder.Found);
        }

        return all;
    }

    /// <summary>Builds the library with mutants. Those that do not compile are left out.</summary>
    /// <returns>Those that compiled.</returns>
    public IReadOnlyList<Mutant> Build(IReadOnlyList<Mutant> mutants)
    {
        var kept = new List<Mutant>(mutants);
        while (true)
        {
            Write(kept);
            (int exit, string output) = Shell.Run("dotnet", [
                "build", Path.Combine(_copy, Library, Library + ".csproj"), "-c", "Release", "-f", Framework, "--nologo", "-v", "quiet", "-p:RunAnalyzers=false",
                "-p:EnforceCodeStyleInBuild=false", "-p:GenerateDocumentationFile=false", "-p:TreatWarningsAsErrors=false", "-p:MSBuildTreatWarningsAsErrors=false",
                "-p:WarningLevel=0", "-p:Deterministic=false", "-p:ContinuousIntegrationBuild=false"]);
            if (exit == 0)
            {
                return kept;
            }

            (string Id, string File, int Line, int Column)[] errors = [.. Errors(output)];
            const string MustBeConstant = "CS0133";
            int constants = _notConstant.Count;
            foreach ((_, string file, int line, int column) in errors.Where(error => error.Id == MustBeConstant))
            {
                _notConstant.UnionWith(TokenAt(file, line, column).Parent!.Ancestors().SelectMany(node => Schemata.ConstantsOf(node))
                    .Select(name => (Path.GetRelativePath(Path.Combine(_copy, Library), file), name)));
            }

            if (_notConstant.Count > constants)
            {
                continue;
            }

            HashSet<int> wrong = [.. errors.SelectMany(error => At(error.File, error.Line, error.Column, kept))];
            if (kept.RemoveAll(m => wrong.Contains(m.Id)) == 0)
            {
                throw new InvalidOperationException("The library does not build:\n" + output);
            }
        }
    }

    private void Write(IReadOnlyList<Mutant> mutants)
    {
        foreach (string file in Directory.EnumerateFiles(_source, "*", SearchOption.AllDirectories))
        {
            string name = Path.GetRelativePath(_source, file);
            if (!name.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj") && name.Split(Path.DirectorySeparatorChar)[0] is Library or "LanguageFeatures.cs")
            {
                string to = Path.Combine(_copy, name);
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(file, to, overwrite: true);
            }
        }

        ILookup<string, Mutant> byFile = mutants.ToLookup(m => m.File);
        foreach (string file in byFile.Select(group => group.Key).Union(_notConstant.Select(c => c.File)))
        {
            SyntaxNode root = byFile[file].FirstOrDefault()?.Node.SyntaxTree.GetRoot()
                ?? CSharpSyntaxTree.ParseText(File.ReadAllText(Path.Combine(_source, Library, file)), Parse).GetRoot();
            var schemata = new Schemata([.. byFile[file]], [.. _notConstant.Where(c => c.File == file).Select(c => c.Name)]);
            File.WriteAllText(Path.Combine(_copy, Library, file), schemata.Visit(root)!.ToFullString());
        }

        File.WriteAllText(Path.Combine(_copy, Library, "MutationSwitch.cs"), SwitchText);
    }

    private static IEnumerable<(string Id, string File, int Line, int Column)> Errors(string output) =>
        ErrorLine().Matches(output).Select(m => (m.Groups[4].Value, m.Groups[1].Value, Whole(m.Groups[2].Value), Whole(m.Groups[3].Value))).Distinct();

    private static SyntaxToken TokenAt(string file, int line, int column)
    {
        SourceText text = SourceText.From(File.ReadAllText(file));
        return CSharpSyntaxTree.ParseText(text, Parse).GetRoot().FindToken(text.Lines[line - 1].Start + column - 1);
    }

    /// <summary>The mutants that an error comes from: the one around it, those of a constant named there, or else all of the member.</summary>
    private static IEnumerable<int> At(string file, int line, int column, IReadOnlyList<Mutant> kept)
    {
        SyntaxToken token = TokenAt(file, line, column);
        foreach (SyntaxNode node in token.Parent!.AncestorsAndSelf())
        {
            ExpressionSyntax? condition = node is ConditionalExpressionSyntax c ? c.Condition : node is IfStatementSyntax s ? s.Condition : null;
            if (condition is not null && SwitchCall().Match(condition.ToString()) is { Success: true } call)
            {
                return [Whole(call.Groups[1].Value)];
            }
        }

        int[] constants =
        [
            .. kept.Where(m => m.Node.Ancestors().OfType<VariableDeclaratorSyntax>().Any(v => v.Identifier.ValueText == token.ValueText)).Select(m => m.Id),
        ];
        if (constants.Length > 0)
        {
            return constants;
        }

        SyntaxNode? member = token.Parent!.AncestorsAndSelf().FirstOrDefault(n => n is MemberDeclarationSyntax and not TypeDeclarationSyntax);
        return SwitchCall().Matches((member ?? token.SyntaxTree!.GetRoot()).ToString()).Select(m => Whole(m.Groups[1].Value));
    }

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    private const string SwitchText = """
        namespace Refrigerant.Recovery
        {
            public static class MutationSwitch
            {
                private static readonly int Active = int.Parse(System.Environment.GetEnvironmentVariable("MUTANT") ?? "0");
                private static readonly bool[]? Seen = System.Environment.GetEnvironmentVariable("MUTANTS_SEEN") is string count ? new bool[int.Parse(count) + 1] : null;

                public static bool Is(int id)
                {
                    if (Seen != null)
                    {
                        Seen[id] = true;
                    }

                    return id == Active;
                }

                public static bool[]? Reached() => Seen;
            }
        }
        """;

    [GeneratedRegex(@"^\s*(/[^\n(]+\.cs)\((\d+),(\d+)\): error (CS\d+)", RegexOptions.Multiline)]
    private static partial Regex ErrorLine();

    [GeneratedRegex(@"MutationSwitch\.Is\((\d+)\)")]
    private static partial Regex SwitchCall();
}
