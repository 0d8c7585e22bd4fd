using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Refrigerant.Recovery.Mutation;

/// <summary>Writes mutants into a file, each behind a switch, so that one build serves all (Untch, Offutt and Harrold 1993: mutant schemata).</summary>
/// <param name="mutants">Those of the file.</param>
/// <param name="notConstant">Names of constants of the file that are made from one with a mutant in it.</param>
internal sealed class Schemata(IReadOnlyCollection<Mutant> mutants, IReadOnlyCollection<string> notConstant) : CSharpSyntaxRewriter
{
    /// <summary>Full name of the method that tells whether a mutant is the one of this run.</summary>
    public const string Switch = "global::Refrigerant.Recovery.MutationSwitch.Is";

    private readonly ILookup<SyntaxNode, Mutant> _byNode = mutants.ToLookup(m => m.Node);
    private readonly HashSet<SyntaxNode> _constants =
    [
        .. mutants.SelectMany(m => m.Node.Ancestors()).Where(n => n is FieldDeclarationSyntax f && f.Modifiers.Any(SyntaxKind.ConstKeyword)
            || n is LocalDeclarationStatementSyntax l && l.Modifiers.Any(SyntaxKind.ConstKeyword)),
    ];

    public override SyntaxNode? Visit(SyntaxNode? node)
    {
        SyntaxNode? result = base.Visit(node);
        if (node is null || result is null)
        {
            return result;
        }

        SyntaxNode inner = result;
        foreach (Mutant mutant in _byNode[node])
        {
            result = inner is StatementSyntax statement
                ? SyntaxFactory.ParseStatement($"if (!{Switch}({Text(mutant.Id)})) {{ {statement.WithoutTrivia().ToFullString()} }}").WithTriviaFrom(statement)
                : SyntaxFactory.ParseExpression(
                    $"({Switch}({Text(mutant.Id)}) ? ({mutant.Change!(inner.WithoutTrivia()).ToFullString()}) : ({result.WithoutTrivia().ToFullString()}))").WithTriviaFrom(inner);
        }

        return _constants.Contains(node) || IsMadeFromOne(node) ? WithoutConst(result!) : result;
    }

    /// <summary>Names of the constants that a node declares, of a class or within a method; none where it declares none.</summary>
    public static IEnumerable<string> ConstantsOf(SyntaxNode node)
    {
        VariableDeclarationSyntax? declaration = node switch
        {
            FieldDeclarationSyntax field when field.Modifiers.Any(SyntaxKind.ConstKeyword) => field.Declaration,
            LocalDeclarationStatementSyntax local when local.Modifiers.Any(SyntaxKind.ConstKeyword) => local.Declaration,
            _ => null,
        };
        return declaration is null ? [] : declaration.Variables.Select(v => v.Identifier.ValueText);
    }

    private bool IsMadeFromOne(SyntaxNode node) => ConstantsOf(node).Any(notConstant.Contains);

    private static SyntaxNode WithoutConst(SyntaxNode node)
    {
        if (node is FieldDeclarationSyntax field)
        {
            SyntaxToken word = field.Modifiers.First(m => m.IsKind(SyntaxKind.ConstKeyword));
            return field.WithModifiers(field.Modifiers.ReplaceRange(word,
            [
                SyntaxFactory.Token(word.LeadingTrivia, SyntaxKind.StaticKeyword, SyntaxFactory.TriviaList(SyntaxFactory.Space)),
                SyntaxFactory.Token(default, SyntaxKind.ReadOnlyKeyword, word.TrailingTrivia),
            ]));
        }

        var local = (LocalDeclarationStatementSyntax)node;
        SyntaxToken token = local.Modifiers.First(m => m.IsKind(SyntaxKind.ConstKeyword));
        return local.WithModifiers(local.Modifiers.Remove(token)).WithLeadingTrivia(token.LeadingTrivia);
    }

    private static string Text(int id) => id.ToString(CultureInfo.InvariantCulture);
}
