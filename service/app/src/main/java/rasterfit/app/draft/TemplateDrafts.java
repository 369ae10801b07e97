package rasterfit.app.draft;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rasterfit.app.catalogue.GearDocuments;
import rasterfit.app.gear.Faults;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.RequiredMembers;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;

/** Makes documents from answers, and sees to it that the catalogue would take them. */
@Component
class TemplateDrafts {
    private final GearDocuments documents;

    TemplateDrafts(GearDocuments documents) {
        this.documents = documents;
    }

    /** @throws ProblemException with every fault of the answers */
    DraftAnswer make(Template template, DraftRequestBody body) {
        RequiredMembers.check(body);
        Faults faults = new Faults();
        Place root = Place.root(faults);
        if (!body.answers().isObject()) {
            root.member("answers").wrongForm("Expected an object with one member for each answer.");
            faults.throwIfAny();
        }
        Answers answers = Answers.read(root, CommonAsks.of(template), body);
        Answers.together(root.member("answers"), body, CommonAsks.PRICE, CommonAsks.CURRENCY);
        faults.throwIfAny();
        Draft draft = new Draft(
                text(answers.of(CommonAsks.ID)),
                answers.of(CommonAsks.NAME).text(),
                "described with the template " + template.id());
        Part item = draft.root();
        template.fill(answers, item);
        price(answers, item);
        DraftAnswer made = new DraftAnswer(template.kind().path(), draft.item(), draft.assumed());
        check(template, draft);
        return made;
    }

    private static void price(Answers answers, Part item) {
        Answer price = answers.of(CommonAsks.PRICE);
        if (price.isGiven()) {
            Part written = item.object("price");
            written.answer("amount", price);
            written.answer("currency", answers.of(CommonAsks.CURRENCY));
        }
    }

    private static @Nullable String text(Answer answer) {
        return answer.isKnown() ? answer.text() : null;
    }

    /** What is wrong with the document is wrong with an answer, or else with the template, which is no matter of the caller's. */
    private void check(Template template, Draft draft) {
        try {
            documents.check(template.kind(), draft.item());
        } catch (ProblemException refused) {
            List<ProblemError> errors = new ArrayList<>();
            for (ProblemError error : refused.errors()) {
                String pointer = draft.answerAt(String.valueOf(error.pointer()))
                        .orElseThrow(() -> new IllegalStateException(
                                "the template " + template.id() + " makes a faulty document", refused));
                errors.add(ProblemError.at(pointer, error.message(), error.limit()));
            }
            throw new ProblemException(
                    refused.type(),
                    errors.get(0).pointer() + ": " + errors.get(0).message(),
                    errors);
        }
    }
}
