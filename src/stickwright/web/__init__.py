"""The app: pages by what the practitioner does, served to this machine only.

How a page is added. A topic is a module ``web/<topic>.py`` with ``ROUTES: tuple[BaseRoute, ...]``, named once in
``app.TOPICS``, and a template in ``web/templates`` that begins with ``{% extends "base.html" %}`` and fills the blocks
``title``, ``main`` and, unless the page of a visit follows the order of the steps, ``next``. A handler is a plain ``def``
(it runs in a thread), and does three things::

    def readings(request: Request) -> Response:
        here = at_visit(request)                          # desk.At: store, visit, player, who, writes; or 404, locked
        return page(request, "readings.html", readings_page(here), here=here)      # the dictionary: a named, tested function

    def save_readings(request: Request) -> Response:
        here, typed = at_visit(request), form(request)    # guard has read, bounded and checked the form
        try:
            document = save_document(here.store, here.visit.id, name, body, who=here.who)
        except BadInput as refused:                       # the sentences beside the field, nothing typed is lost
            return page(request, "readings.html", readings_page(here, typed), here=here, refused=refused, status=422)
        return done(request, here.url("readings"), message(ReadingsPage.saved, site=Name("chin")),
                    undo=undo_of(here, name))             # 303, and the next page says so with an Undo button

    ROUTES = (Route("/visits/{id}/readings", readings, name="readings"),
              Route("/visits/{id}/readings", save_readings, methods=["POST"]))

- ``{id}`` of a visit and ``{code}`` of a player carry the store in which they are (`request_context.Key`): take them through
  `desk.at_visit` and `desk.at_player`, and make addresses by ``here.url("kit")``, never by hand. ``desk.at_shelf(request)``
  is the shelf (``/kit``, and ``/kit?in=d`` for the demo's).
- No words in a template or a handler: each page has a topic in ``codes`` (``ConsentPage`` in ``codes/consent_page.py``) and its
  English in ``catalogue/en``. A template asks for a text as ``{{ t.consent_page.title() }}``, with its parameters by name
  (``t.consent_page.download(code=here.player.code)``); what a handler hands over may be a Message, which a template prints in
  the language that is spoken. Buttons and small words of many pages are in ``t.commands``. ``{{ day | day }}`` and
  ``{{ at | moment }}`` print dates; ``put_right(label, words)`` is a problem with a field, by the label that it has on the page.
- Every form has ``{{ csrf_field }}``; scripts send the header ``X-Csrf`` with ``document.body.dataset.csrf``.
  Methods other than GET and HEAD are refused to readers, and GET changes nothing.
- ``{% import "parts.html" as parts %}``: `field`, `choice`, `tick`, `button`, `figure` draw labelled controls with
  their problem beside them. ``problem_of(field)`` looks a problem up by the field's name (`render.problems_of`).
- No inline style or script: the content policy refuses both. A module ``static/<topic>.js`` is asked for in the block
  ``scripts``. Figures with styles of their own go in as an image: ``parts.figure(svg, alt)``.
- A page that embeds another of ours passes ``policy=policy(frames=True)``; what is embedded answers with
  ``policy(framed=True)``. Files to download: `render.download`.
- WebSockets are guarded like pages (host, origin, cookie, role); call ``desk_of(socket).touch(...)`` while measuring,
  so that nothing locks itself meanwhile.
- Anything that raises BadInput and is not caught becomes a page with its sentences, status 422.
"""
